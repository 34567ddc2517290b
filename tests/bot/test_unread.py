"""What could not be handled and may have been about pain: she is stopped, her clinician told. All ours."""

from datetime import timedelta
from typing import Any

import pytest

from tests.bot.test_setaside import PATIENCE, Broken, breaks, heard, taps, theatre, unreadable
from tests.conftest import briefly
from tests.journeys.theatre import Theatre

__all__ = ["theatre"]
pytestmark = briefly


async def held_of(theatre: Theatre) -> list[str]:
    """Reasons of Ann's open holds."""
    person = theatre.clients[0].facts.person
    holds = await theatre.stage.house.store.run(lambda tx: tx.health.holds(person))
    return [hold.reason for hold in holds]


def flagged(theatre: Theatre) -> list[dict[str, Any]]:
    """What Dana has been told, repeats left out."""
    found = [line.get("flag") for line in heard(theatre, theatre.dana, "flag")]
    return [dict(said.args) for said in found if said]


async def test_what_may_be_about_pain_stops_her_prompts_and_her_clinician_hears_at_once(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = theatre.clients[0]
    Broken(monkeypatch)
    await ann.until(8)
    await breaks(theatre, ann.facts.account, "my hip hurts")
    (told,) = ann.texts("not-handled-paused")
    assert told.ids == ("not-handled-paused", "ask-pain-sign")
    assert not ann.texts("not-handled")
    (flag,) = flagged(theatre)
    assert flag["kind"] == "not-read"
    assert (flag["urgent"], flag["held"], flag["words"]) == (True, False, "my hip hurts")
    assert (flag["name"], flag["phone"], flag["since"][:13]) == ("Ann", "", "2027-03-08T08")
    (line,) = heard(theatre, theatre.dana, "flag")
    assert max(told.at, line.at) <= ann.at(8) + PATIENCE
    admin = [each.words for each in theatre.lines() if each.chat == theatre.kim]
    assert not any("hip" in words for words in admin)
    silence = told.at + timedelta(minutes=15)
    await theatre.stage.step(silence - timedelta(seconds=1))
    assert await held_of(theatre) == []
    await theatre.stage.step(silence)
    assert await held_of(theatre) == ["not-read"]
    assert ann.heard()[-1].ids == ("no-answer-so-stopped", "stop-today")
    assert len(flagged(theatre)) == 1  # it is the same episode (I7)
    await ann.until(21)
    assert len(ann.prompted()) == 1  # the one before


async def test_who_says_that_nothing_hurts_goes_on_that_day(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Of what could not be read at all: her clinician still hears of it, and the words are nobody's."""
    ann = theatre.clients[0]
    Broken(monkeypatch)
    monkeypatch.setattr("bot.telegram.unread.understand", unreadable)
    await ann.until(8)
    await breaks(theatre, ann.facts.account, "hello")
    assert [flag.get("words") for flag in flagged(theatre)] == [None]
    assert (await ann.press("oops")).ids == ("mistake-noted",)
    await ann.until(20)
    assert len(ann.prompted()) > 1
    assert await held_of(theatre) == []


async def test_words_that_answer_an_open_question_about_pain_are_about_pain(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    """ "hello" to "where does it hurt" is lost to the question; she is asked it again, not from its start."""
    ann = theatre.clients[0]
    Broken(monkeypatch)
    await ann.until(8)
    await ann.say("something hurts")
    await ann.press("p:sign:none")
    await breaks(theatre, ann.facts.account, "hello")
    assert ann.heard()[-1].ids == ("not-handled-paused", "ask-pain-place")
    assert [flag["kind"] for flag in flagged(theatre)] == ["not-read"]
    await ann.until(8, 20)
    assert await held_of(theatre) == ["question-open"]  # she had said that something hurts


async def test_what_more_she_says_is_told_too_and_what_cannot_be_read_only_once_a_day(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = theatre.clients[0]
    fault = Broken(monkeypatch)
    fault.texts = {"my hip hurts", "i fell", "hello"}
    await ann.until(8)
    with monkeypatch.context() as blind:
        blind.setattr("bot.telegram.unread.understand", unreadable)
        for _ in range(2):
            await breaks(theatre, ann.facts.account, "hello")
            await theatre.stage.later(seconds=PATIENCE.total_seconds())
    await breaks(theatre, ann.facts.account, "i fell")
    assert [flag.get("words") for flag in flagged(theatre)] == [None, "i fell"]
    assert len({flag["flag"] for flag in flagged(theatre)}) == 2


async def test_a_clinicians_words_about_pain_stop_nobody(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    Broken(monkeypatch)
    await breaks(theatre, theatre.kim, "my hip hurts")
    assert heard(theatre, theatre.kim, "not-handled-now")
    assert flagged(theatre) == []


async def test_tried_again_in_vain_it_stops_her_no_second_time(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    ann = theatre.clients[0]
    Broken(monkeypatch)
    await ann.until(8)
    (poison,) = await breaks(theatre, ann.facts.account, "my hip hurts")
    await ann.press("p:sign:none")
    asked = await ann.press("p:place:knee")
    await taps(theatre, "xl", f"x:{poison}", f"xr:{poison}")
    await theatre.stage.later(seconds=PATIENCE.total_seconds())
    assert len(heard(theatre, theatre.kim, "set-aside")) == 2
    assert ann.heard()[-1] == asked
    assert len(flagged(theatre)) == 1


async def test_where_she_cannot_be_stopped_she_is_still_told_whom_to_call(
    theatre: Theatre, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The fault may lie in all that is about pain."""
    ann = theatre.clients[0]
    Broken(monkeypatch)
    monkeypatch.setattr("scheduler.usecases.unread.pause", unreadable)
    await ann.until(8)
    await breaks(theatre, ann.facts.account, "my hip hurts")
    assert ann.texts("not-handled")
    assert heard(theatre, theatre.kim, "set-aside")
