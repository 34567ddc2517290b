"""Keys, sealing and lookups. What has no source on its line is ours."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from storage.keys import DamagedError, Keyring, WrongKeyError, clean, new_key

CANARY = "knee sore since Tuesday"
OLD, NEW = "O" * 42 + "A", "N" * 42 + "A"
# 32 bytes 0, 1, 2 ...; sealed with HKDF-SHA256 written out by hand from RFC 5869 (memory) and the
# nonce 0, 1, 2 ...: a format once released is opened for ever.
COUNTING_KEY = "AAECAwQFBgcICQoLDA0ODxAREhMUFRYXGBkaGxwdHh8"
RELEASED = "aesgcm:8c411fb8:AAECAwQFBgcICQoL0RExvRLY_ScwMfOHQFMhyImzxG4_iMtMs-GtP9ROIxRFonxQ_Q"

words = st.text(st.characters(exclude_characters="\0", exclude_categories=["Cs"]))
json_values = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats(allow_nan=False, allow_infinity=False)
    | words,
    lambda inner: st.lists(inner) | st.dictionaries(words, inner),
    max_leaves=10,
)


@pytest.mark.parametrize("keys", ["none", OLD, f"{NEW},{OLD}"])
@given(value=json_values)
def test_what_is_sealed_comes_back(keys: str, value: object) -> None:
    ring = Keyring.parse(keys)
    assert ring.open(ring.seal(value)) == value


def test_words_cannot_be_read_once_sealed() -> None:
    assert CANARY not in Keyring.parse(OLD).seal({"note": CANARY})
    assert CANARY in Keyring.parse("none").seal({"note": CANARY})


def test_the_same_words_are_never_sealed_into_the_same_text() -> None:
    ring = Keyring.parse(OLD)
    assert len({ring.seal(CANARY) for _ in range(100)}) == 100


def test_a_sealed_text_of_the_first_release_still_opens() -> None:
    assert Keyring.parse(COUNTING_KEY).open(RELEASED) == {"note": "Knie, 3/10"}


def test_after_a_rotation_old_rows_open_and_new_rows_are_under_the_new_key() -> None:
    before, after = Keyring.parse(OLD), Keyring.parse(f"{NEW},{OLD}")
    old_row, new_row = before.seal(CANARY), after.seal(CANARY)
    assert after.open(old_row) == CANARY
    assert Keyring.parse(NEW).open(new_row) == CANARY
    assert (after.is_current(old_row), after.is_current(new_row)) == (False, True)


def test_rows_from_the_time_without_a_key_still_open() -> None:
    plain_row = Keyring.parse("none").seal(CANARY)
    ring = Keyring.parse(OLD)
    assert ring.open(plain_row) == CANARY
    assert not ring.is_current(plain_row)
    assert Keyring.parse("none").is_current(plain_row)


@pytest.mark.parametrize("keys", ["none", NEW])
def test_the_wrong_key_is_told_by_name_and_never_by_value(keys: str) -> None:
    row = Keyring.parse(OLD).seal(CANARY)
    with pytest.raises(WrongKeyError, match="not among those given") as refusal:
        Keyring.parse(keys).open(row)
    assert re.fullmatch("[0-9a-f]{8}", refusal.value.key_name)
    assert OLD not in str(refusal.value)


@pytest.mark.parametrize("at", [16, 30, -1])
def test_a_changed_row_is_refused_and_never_served_wrong(at: int) -> None:
    ring = Keyring.parse(OLD)
    row = list(ring.seal(CANARY))
    row[at] = "A" if row[at] != "A" else "B"
    with pytest.raises(DamagedError):
        ring.open("".join(row))


@pytest.mark.parametrize(
    "row", ["", CANARY, "plain", "plain:", "plain:{", "aesgcm:", "aesgcm:0a0b0c0d", "other:1:2"]
)
def test_a_row_that_was_never_sealed_is_refused(row: str) -> None:
    with pytest.raises(DamagedError):
        Keyring.parse(OLD).open(row)


@pytest.mark.parametrize("rest", ["", "AA", "*", "ABCDEFGHIJKLMNOPQR", "é"])
def test_a_row_that_was_cut_short_is_refused(rest: str) -> None:
    ring = Keyring.parse(OLD)
    start, _, _ = ring.seal(CANARY).rpartition(":")
    with pytest.raises(DamagedError):
        ring.open(f"{start}:{rest}")


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("did\0 12", "did 12"),
        ("\0", ""),
        ("\\u0000", "\\u0000"),  # six typed characters, no NUL
        ("12 \ud83d", "12 \ufffd"),  # half of a surrogate pair
        ("12 \ud83d\ude00", "12 \U0001f600"),  # both halves, as some senders write them
        ("\ude00 and \ud83d\0", "\ufffd and \ufffd"),
        ("doce, según ella", "doce, según ella"),
    ],
)
def test_text_that_no_database_takes_is_mended(text: str, kept: str) -> None:
    ring = Keyring.parse(OLD)
    assert clean(text) == kept
    assert ring.open(ring.seal({text: [text, 12]})) == {kept: [kept, 12]}


@pytest.mark.parametrize("number", [float("nan"), float("inf")])
def test_what_json_has_no_number_for_is_refused(number: float) -> None:
    with pytest.raises(ValueError, match="JSON"):
        Keyring.parse("none").seal(number)


def test_a_lookup_is_an_hmac() -> None:
    ring = Keyring.parse("none")
    ring.use_lookup_secret(b"\x0b" * 20)
    # RFC 4231, test case 1 (memory)
    assert ring.lookup("Hi There") == (
        "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7"
    )


def test_nothing_is_looked_up_before_the_database_is_unlocked() -> None:
    with pytest.raises(RuntimeError, match="unlock"):
        Keyring.parse(OLD).lookup("4711")


def test_a_new_key_is_a_key_and_never_the_same() -> None:
    keys = {new_key() for _ in range(100)}
    assert len(keys) == 100
    assert all(Keyring.parse(key).encrypts for key in keys)


def test_none_leaves_values_readable() -> None:
    assert not Keyring.parse(" none ").encrypts


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "A key is missing"),
        (" ", "A key is missing"),
        (f"{OLD},", "A key is missing"),
        ("None", "number 1 is not a key"),
        (f"{OLD},s3cret", "number 2 is not a key"),
        (OLD[:-1], "number 1 is not a key"),
        (f"{OLD}A", "number 1 is not a key"),
        (f"{OLD[:-2]}é", "number 1 is not a key"),
        (f"none,{OLD}", "stands alone"),
        (f"{OLD}, {OLD}", "twice"),
    ],
)
def test_a_bad_key_is_refused_in_one_sentence_that_does_not_repeat_it(text: str, says: str) -> None:
    with pytest.raises(ValueError, match=says) as refusal:
        Keyring.parse(text)
    sentence = str(refusal.value)
    assert sentence.endswith(".")
    assert "s3cret" not in sentence
    assert OLD[:-2] not in sentence
