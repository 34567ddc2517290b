"""What a client sends that is no text: pictures, voice, places, other people's words.

None of it is kept. Each gets one short answer that says what was not taken, and a way to say that something
hurts: who sends a picture of a foot or speaks into the phone may well want to say just that.
"""

from __future__ import annotations

from dataclasses import replace

from bot.telegram.handlers.act import Act
from bot.understand import any_language
from scheduler.domain.messages import text
from scheduler.domain.reply import Reply, reply
from scheduler.usecases import pain
from scheduler.usecases import times as own_times
from scheduler.usecases.questions import about_harm, harm_again

HEARD = frozenset({"photo", "video", "animation", "document", "voice", "audio"})
"""What can have words of hers below it."""


def without_words(act: Act) -> Reply:
    """The answer to anything without a word in it."""
    update = act.update
    if update.file == "location" and own_times.asks_zone(act.tx, act.who.id):
        return own_times.propose_zone(act.tx, act.who.id, update.zone, act.now)
    number = act.tx.book.practice().emergency_number
    not_taken = text("cannot-see-files", file=update.file or "other", emergency_number=number)
    if act.tx.people.client(act.who.id).consent_at is None:
        return Reply((not_taken,))  # before consent nothing about health is asked (J2)
    if open_ := about_harm(act.tx, act.who.id):
        return Reply((not_taken, harm_again(act.tx, open_)))
    return Reply((not_taken, text("file-hurts")))


def beside_words(act: Act, answer: Reply) -> Reply:
    """The answer to the words below a file, and that they are all that was taken of it."""
    if act.update.kind != "file" or act.update.file not in HEARD:
        return answer
    return Reply((*answer.message, text("only-words-read")), answer.lane, answer.in_place)


def zone_sure(act: Act) -> Reply:
    """Yes to the time zone that the button names; one of an earlier version says yes or no only."""
    if act.args[0] in {"0", "1"}:
        return own_times.zone_sure(act.tx, act.who.id, act.args[0] == "1", act.now)
    return own_times.zone_is(act.tx, act.who.id, act.args[0], act.now)


def zone_not(act: Act) -> Reply:
    """No to the time zone that the button names."""
    return own_times.zone_is_not(act.tx, act.who.id, act.args[0], act.now)


def forwarded(act: Act) -> Reply | None:
    """Words of somebody else, or of another time: no answer of hers and no count.

    Pain or a fall in them is asked about, as she may have passed on what she wrote to a friend. `None`
    where they are taken as hers after all: before consent, and for words of self-harm.
    """
    tx, who = act.tx, act.who
    intent = any_language.read(act.update.text, who.language)
    if intent.crisis or tx.people.client(who.id).consent_at is None:
        return None
    open_ = about_harm(tx, who.id)
    if open_ is not None:
        return Reply((text("forwarded", asks=True), harm_again(tx, open_)))
    if not any_language.found(intent):
        return reply("forwarded", asks=False)
    # without the words: she can say that it was not about her
    answer = pain.hurts(tx, who.id, act.now)
    return replace(answer, message=(text("forwarded", asks=True), *answer.message))
