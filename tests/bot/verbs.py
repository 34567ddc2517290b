"""One case for every verb that a button can carry: who may, on what, after what, and what it changes.

A press is only ever done for the person it is for and on what is hers (J5, D3). `{ann}` and the like stand
for numbers of the furnished practice.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tests.bot.house import House
from tests.journeys.rooms import ANN, BO, DANA, EVE, GIL, KIM

Step = tuple[int, str] | Callable[[House], None]


@dataclass(frozen=True)
class Verb:
    """`own` is pressed by `by` after `lead` and answered with `answers`; of the tables `changes` change.

    `foreign` names what is not hers, `refused` is the answer to it; empty where the verb names nothing.
    Steps of the lead are presses or, after a quotation mark, typed words.
    """

    by: int
    own: str
    answers: str
    changes: tuple[str, ...] = ()
    lead: tuple[Step, ...] = ()
    foreign: str = ""
    refused: str = "not-yours"

    @property
    def name(self) -> str:
        return self.own.partition(":")[0]


def carry_out(house: House, steps: Sequence[Step]) -> None:
    """What has to happen before."""
    for step in steps:
        if callable(step):
            step(house)
        elif step[1].startswith('"'):
            house.say(step[0], step[1][1:])
        else:
            house.press(step[0], step[1].format(**house.ids()))


OVER = "question-over"
HURT = (ANN, "hurt")
SIGNS = (HURT, (ANN, "p:sign:chest"), (GIL, "hurt"), (GIL, "p:sign:chest"))
HELD: tuple[Step, ...] = ((DANA, "ch:{ann}"), (EVE, "ch:{gil}"))
RELEASE: tuple[Step, ...] = (*HELD, (DANA, "rel:{ann}"), (EVE, "rel:{gil}"))
AGREED: tuple[Step, ...] = ((BO, "ok:1"),)
TICKED: tuple[Step, ...] = (*AGREED, (BO, "r:bones:yes"), (BO, "r:bones:broken-bone"))
SCREENS: tuple[Step, ...] = (*AGREED, *((BO, f"r:{s}:none") for s in ("bones", "heart", "else")))
DRAFT: tuple[Step, ...] = ((DANA, "cp:{ann}"),)
FIELD: tuple[Step, ...] = (*DRAFT, (DANA, "df:daily_total"))
PREVIEW: tuple[Step, ...] = (*FIELD, (DANA, "dv:daily_total:30"), (DANA, "dp"))
BREAK: tuple[Step, ...] = ((ANN, '"/break'),)
WHY: tuple[Step, ...] = (*BREAK, (ANN, "br:travel"))
AWAY: tuple[Step, ...] = (*WHY, (ANN, "bl:3"))
AHEAD: tuple[Step, ...] = tuple((who, '"away tomorrow for 3 days') for who in (ANN, GIL))
PAUSED: tuple[Step, ...] = ((DANA, "kl:{ann}:other:7"),)
COVERED: tuple[Step, ...] = ((KIM, "cvu:{dana}:{eve}:7"),)
WEEK: tuple[Step, ...] = (House.asked_about_the_week,)
MADRID = "Europe/Madrid"
SHARED: tuple[Step, ...] = (House.shared_her_place,)
COMPANION: tuple[Step, ...] = (House.ann_has_a_companion,)
OWN_DAYS: tuple[Step, ...] = (House.ann_picks_her_days,)
DAYS: tuple[Step, ...] = (House.days_were_judged,)
ASIDE: tuple[Step, ...] = (House.an_update_was_set_aside,)
TESTED: tuple[Step, ...] = (House.tested,)
TESTED_HERE: tuple[Step, ...] = (House.tested_by_the_clinician,)
LEAVING: tuple[Step, ...] = ((ANN, '"/leave'),)
SURE: tuple[Step, ...] = (*LEAVING, (ANN, "lv"))
NAMED: tuple[Step, ...] = ((KIM, "ir:client"), (KIM, '"Fay'))

VERBS = (
    # a client's
    Verb(ANN, "all:{ann_bout}", "logged", ("ledger", "bout"), (), "all:{gil_bout}", OVER),
    Verb(ANN, "few:{ann_bout}", "ask-reps", ("question",), (), "few:{gil_bout}", OVER),
    Verb(ANN, "lat:{ann_bout}", "put-off", ("bout",), (), "lat:{gil_bout}", OVER),
    Verb(ANN, "skp:{ann_bout}", "skipped", ("bout",), (), "skp:{gil_bout}", OVER),
    Verb(ANN, "n:4", "logged", ("ledger", "bout", "question"), ((ANN, "few:{ann_bout}"),)),
    Verb(ANN, "sure:1", "logged", ("ledger", "bout", "question"), ((ANN, '"31'),)),
    Verb(ANN, "hurt", "ask-pain-sign", ("question", "bout")),
    Verb(ANN, "fell", "ask-fall-sign", ("question", "bout")),
    Verb(ANN, "oops", "mistake-noted", ("question",), (HURT,)),
    Verb(ANN, "p:sign:chest", "stop-emergency", ("hold", "flag", "report", "question"), (HURT,)),
    Verb(ANN, "f:sign:none", "ask-fall-injured", ("question",), ((ANN, "fell"),)),
    Verb(ANN, "m:9", "stop-today", ("hold", "flag", "report"), (House.asked_in_the_morning,)),
    Verb(BO, "ok:1", "ask-screen-bones", ("client", "question", "audit")),
    Verb(BO, "r:bones:none", "ask-screen-heart", ("question",), AGREED),
    Verb(BO, "ro:bones:broken-bone", "ask-which", ("question",), TICKED),
    Verb(BO, "u:3", "ask-times", ("client", "question"), SCREENS),
    Verb(BO, "t:keep", "ready-waiting", ("person", "client", "question"), (*SCREENS, (BO, "u:3"))),
    Verb(ANN, "pass:1", "passed-on", ("flag", "question"), ((ANN, '"a blue kettle'),)),
    Verb(ANN, "hq", "ask-screen-bones", ("question",)),
    Verb(ANN, "br:travel", "ask-break-length", ("question",), BREAK),
    Verb(ANN, "bl:3", "break-started", ("pause", "flag", "bout", "audit", "question"), WHY),
    Verb(ANN, "bn", "break-not-now", ("question",), WHY),
    Verb(ANN, "bm", "ask-break-length", ("question",), AWAY),
    Verb(ANN, "bs", "ask-break-reason", ("question",)),
    Verb(
        ANN, "bx:{ann_break}", "break-cancelled", ("pause", "flag", "audit"), AHEAD,
        "bx:{gil_break}", OVER,
    ),
    Verb(ANN, "bb", "break-over", ("pause", "flag", "bout", "audit"), AWAY),
    Verb(ANN, "wk:keep", "week-days-kept", ("week", "question"), WEEK),
    Verb(ANN, "wd:2027-03-09", "choose-days", ("question",), WEEK),
    Verb(ANN, "wo:2027-03-08", "choose-days", ("question",), WEEK),
    Verb(ANN, "td:2", "ask-times-days", ("question",), OWN_DAYS),
    Verb(ANN, "to:0", "ask-times-days", ("question",), OWN_DAYS),
    Verb(ANN, "tk", "ask-times", ("client", "question", "audit"), OWN_DAYS),
    Verb(ANN, "mu:0", "make-up-declined", ("week", "question"), WEEK),
    Verb(ANN, "wq:none", "week-thanks", ("report", "question"), WEEK),
    Verb(ANN, "re:{dana}", "ask-reply", ("question",)),
    Verb(
        ANN, "cd:back-raise:2027-03-08:1", "companion-noted", ("companion_entry",), COMPANION,
        "cd:hover-hold:2027-03-08:1", "companion-not-planned",
    ),
    Verb(ANN, "how", "how-to-asked"),
    Verb(
        ANN, "hw:back-raise", "how-to-asked", ("client",), COMPANION, "hw:hover-hold", OVER,
    ),
    Verb(ANN, f"zs:{MADRID}", "ask-times", ("client", "question", "audit"), SHARED),
    Verb(ANN, f"zn:{MADRID}", "ask-times-zone", ("question",), SHARED),
    Verb(ANN, "st", "step-not-here"),
    Verb(ANN, "sg", "ask-step-times", ("question",), (*TESTED, (ANN, "st"))),
    Verb(ANN, "sn", "step-left", ("question",), (*TESTED, (ANN, "st"))),
    Verb(
        ANN, "sb:{ann_test}", "step-taken-back", ("step_test",), TESTED, "sb:{gil_test}", OVER,
    ),
    Verb(ANN, "mf", "data-by-practice"),
    Verb(ANN, "lx", "leave-not", ("question",), LEAVING),
    Verb(ANN, "lv", "ask-leave-sure", ("question",), LEAVING),
    Verb(ANN, "lvx", "leave-not", ("question",), SURE),
    Verb(ANN, "lvy", "left", ("person", "client", "flag", "bout", "audit", "question"), SURE),
    # a clinician's
    Verb(DANA, "tp:{ann}", "step-page", (), TESTED, "tp:{gil}"),
    Verb(DANA, "tl:{ann}", "ask-client-step", ("question",), foreign="tl:{gil}"),
    Verb(
        DANA, "tv:{ann}", "client-step-noted", ("step_test", "client", "flag", "question"),
        ((DANA, "tl:{ann}"),), "tv:{gil}",
    ),
    Verb(DANA, "th:{ann}:1", "step-page", ("client", "audit"), (), "th:{gil}:1"),
    Verb(
        DANA, "tb:{ann}:{ann_test}", "step-page", ("step_test",), TESTED_HERE,
        "tb:{gil}:{gil_test}",
    ),
    Verb(DANA, "cl", "caseload"),
    Verb(DANA, "dg:1:0", "digest", (), (House.digests_were_made,), "dg:2:0"),
    Verb(DANA, "dt", "ask-digest-time"),
    Verb(DANA, "dw:3", "digest-time-kept", ("staff",)),
    Verb(DANA, "dh:9", "digest-time-kept", ("staff",)),
    Verb(DANA, "cn:0", "caseload"),
    Verb(DANA, "w:{ann}", "ask-words", ("question",), foreign="w:{gil}"),
    Verb(DANA, "c:{ann}", "client-page", foreign="c:{gil}"),
    Verb(DANA, "cr:{ann}", "ask-ceiling", foreign="cr:{gil}"),
    Verb(DANA, "cc:{ann}:low", "cleared", ("clearance", "audit"), foreign="cc:{gil}:low"),
    Verb(DANA, "cp:{ann}", "plan-card", ("question",), foreign="cp:{gil}"),
    Verb(DANA, "ch:{ann}", "client-held", ("hold", "bout"), foreign="ch:{gil}"),
    Verb(DANA, "kb:{ann}", "ask-client-break-reason", foreign="kb:{gil}"),
    Verb(DANA, "kr:{ann}:illness", "ask-client-break-length", foreign="kr:{gil}:illness"),
    Verb(
        DANA, "kl:{ann}:illness:7", "client-on-break", ("pause", "bout", "audit"), (),
        "kl:{gil}:illness:7",
    ),
    Verb(DANA, "ke:{ann}", "client-break-over", ("pause", "bout", "audit"), PAUSED, "ke:{gil}"),
    Verb(DANA, "rel:{ann}", "ask-release", ("question",), HELD, "rel:{gil}"),
    Verb(DANA, "rd:{ann}:20", "ask-release-day", ("question",), RELEASE, "rd:{gil}:20"),
    Verb(
        DANA, "rf:{ann}:20:tomorrow", "released", ("hold", "plan", "audit", "question"), RELEASE,
        "rf:{gil}:20:tomorrow",
    ),
    Verb(DANA, "fx:{ann_flag}", "ask-outcome", (), SIGNS, "fx:{gil_flag}"),
    Verb(DANA, "fo:{ann_flag}:called", "flag-closed", ("flag",), SIGNS, "fo:{gil_flag}:called"),
    Verb(DANA, "df:daily_total", "ask-plan-daily-total", ("question",), DRAFT),
    Verb(DANA, "dv:daily_total:30", "plan-card", ("question",), FIELD),
    Verb(DANA, "dc", "plan-card", ("question",), FIELD),
    Verb(DANA, "dp", "plan-first-day", ("question",), DRAFT),
    Verb(DANA, "ds:0", "plan-saved", ("plan", "audit", "question"), PREVIEW),
    Verb(DANA, "dx", "plan-cancelled", ("question",), DRAFT),
    Verb(DANA, "jl:{ann}", "judged-days", (), (), "jl:{gil}"),
    Verb(DANA, "jd:{ann}:2027-03-04", "ask-verdict", (), DAYS, "jd:{gil}:2027-03-04"),
    Verb(
        DANA, "jv:{ann}:2027-03-04:excused", "verdict-kept", ("day", "audit"), DAYS,
        "jv:{gil}:2027-03-04:excused",
    ),
    Verb(DANA, "hp:stomp", "own-card", ("question",)),
    Verb(DANA, "hx:stomp", "own-card", ("setting", "audit")),
    # an admin's
    Verb(KIM, "gp:stomp", "own-card", ("question",), (), "gp:handstand", OVER),
    Verb(KIM, "gx:stomp", "own-card", ("setting", "audit"), (), "gx:handstand", OVER),
    Verb(KIM, "s:phone", "ask-setting", ("question",), (), "s:colour", OVER),
    Verb(KIM, "ir:client", "ask-invite-name", ("question",), (), "ir:owner", OVER),
    Verb(
        KIM, "ic:{dana}", "invitation", ("person", "client", "invitation", "audit"), NAMED,
        "ic:{ann}", "no-such-person",
    ),
    Verb(KIM, "ap", "people"),
    Verb(KIM, "an:0", "people"),
    Verb(KIM, "a:{ann}", "person", (), (), "a:999", "no-such-person"),
    Verb(KIM, "ia:{ann}", "invitation", ("invitation", "audit"), (), "ia:999", "no-such-person"),
    Verb(KIM, "d:{ann}", "ask-discharge", (), (), "d:{dana}", "no-such-person"),
    Verb(KIM, "dd:{ann}", "discharged", ("person", "bout"), (), "dd:{dana}", "no-such-client"),
    Verb(KIM, "er:{ann}", "ask-erase", (), (), "er:{dana}", "no-such-person"),
    Verb(
        KIM, "ery:{ann}", "erased", ("person", "client", "plan", "bout", "audit"), (),
        "ery:{dana}", "no-such-person",
    ),
    Verb(KIM, "cv:{dana}", "cover", (), (), "cv:{ann}", "no-such-person"),
    Verb(
        KIM, "cvc:{dana}:{eve}", "ask-cover-until", ("question",), (), "cvc:{dana}:{ann}",
        "no-such-person",
    ),
    Verb(
        KIM, "cvu:{dana}:{eve}:7", "cover-kept", ("cover", "audit"), (), "cvu:{dana}:{ann}:7",
        "no-such-person",
    ),
    Verb(KIM, "cve:{cover}", "cover-ended", ("cover", "audit"), COVERED, "cve:999", OVER),
    Verb(KIM, "xl", "aside", (), ASIDE),
    Verb(KIM, "x:7", "aside-one", (), ASIDE, "x:8", "aside-over"),
    Verb(KIM, "xr:7", "aside-again", ("audit",), ASIDE, "xr:8", "aside-over"),
    Verb(KIM, "xa", "aside-again", ("audit",), ASIDE),
    Verb(KIM, "xd:7", "ask-drop", (), ASIDE, "xd:8", "aside-over"),
    Verb(KIM, "xx:7", "aside-dropped", ("audit",), ASIDE, "xx:8", "aside-over"),
    # everybody's
    Verb(
        KIM, "as:clinician", "acting-as", ("person",), (House.kim_is_a_clinician_too,), "as:client",
        "ask-role",
    ),
    Verb(ANN, "ln:en", "language-kept", ("person", "audit")),
    Verb(DANA, "ln:en", "language-kept", ("person", "audit")),
    Verb(KIM, "ln:en", "language-kept", ("person", "audit"), (), "ln:qps", "ask-language"),
)  # fmt: skip
