"""`boutwise invite` and `boutwise people`: how a practice begins before anybody can chat. All ours."""

import json
import re
from pathlib import Path

import pytest
from sqlalchemy import URL

from scheduler.domain.people import Role
from scheduler.usecases.staff import LONGEST_NAME
from storage.engine import Database, database_url
from storage.keys import Keyring
from storage.store import SqlStore
from tests.bot.commands.conftest import Boutwise, plain

START = re.compile(r"/start [\w-]{20,}\n")


def invite(boutwise: Boutwise, role: str, name: str, *more: str) -> str:
    told = boutwise("invite", "--role", role, "--name", name, *more)
    assert told.code == 0, told.err
    return told.out


def people(boutwise: Boutwise) -> list[dict[str, object]]:
    told = boutwise("people", "--json")
    assert (told.code, told.err) == (0, "")
    rows: list[dict[str, object]] = json.loads(told.out)
    return rows


def test_each_role_is_invited_with_a_code_of_its_own_and_stands_in_the_list(
    boutwise: Boutwise, database_at: URL
) -> None:
    url = plain(database_at)
    codes = set()
    for role in ("admin", "clinician", "client"):
        told = boutwise("invite", "--role", role, "--name", f"Some {role}", DATABASE_URL=url)
        assert told.code == 0
        assert START.fullmatch(told.out)
        assert told.faults == ["Single use; give it only to the person it is for."]
        codes.add(told.out)
    assert len(codes) == len(Role)
    rows = json.loads(boutwise("people", "--json", DATABASE_URL=url).out)
    assert [list(row) for row in rows] == [["id", "role", "alias", "state", "clinician"]] * 3
    assert [row["alias"] for row in rows] == ["Some admin", "Some clinician", "Some client"]
    assert [row["role"] for row in rows] == ["admin", "clinician", "client"]
    assert {row["state"] for row in rows} == {"invited"}
    assert [row["clinician"] for row in rows] == [None, None, rows[1]["id"]]


def test_once_the_bots_user_name_is_known_an_invitation_is_a_link(boutwise: Boutwise) -> None:
    invite(boutwise, "admin", "Kim")
    database = Database(database_url("sqlite:///boutwise.db"), Keyring.parse("none"))
    SqlStore(database).run_sync(lambda tx: tx.book.put("bot_username", "demo_bot"))
    database.close_sync()
    link = invite(boutwise, "clinician", "Dana")
    assert re.fullmatch(r"https://t\.me/demo_bot\?start=[\w-]{20,64}\n", link)


def test_people_are_listed_for_the_eye_with_their_clinician(boutwise: Boutwise) -> None:
    assert "Nobody yet" in boutwise("people").out
    assert people(boutwise) == []
    invite(boutwise, "clinician", "Dana")
    invite(boutwise, "client", "Zoë  of\tthe Mill", "--language", "qps")
    told = boutwise("people")
    assert told.code == 0
    dana, zoe = told.out.splitlines()
    assert " ".join(dana.split()) == "1 clinician invited Dana"
    assert " ".join(zoe.split()) == "2 client invited Zoë of the Mill clinician 1"


def test_a_client_is_given_to_the_clinician_named_by_name_or_number(boutwise: Boutwise) -> None:
    invite(boutwise, "clinician", "Dana")
    invite(boutwise, "clinician", "Gil")
    invite(boutwise, "client", "Ann", "--clinician", "gil")
    invite(boutwise, "client", "Bo", "--clinician", "1")
    assert [row["clinician"] for row in people(boutwise)] == [None, None, 2, 1]


@pytest.mark.parametrize("given", [[], ["--clinician", "Nobody"], ["--clinician", "3"]])
def test_an_unclear_clinician_is_refused_with_those_to_choose_from(
    boutwise: Boutwise, given: list[str]
) -> None:
    invite(boutwise, "clinician", "Dana")
    invite(boutwise, "clinician", "Gil")
    told = boutwise("invite", "--role", "client", "--name", "Ann", *given)
    assert (told.code, told.out) == (2, "")
    (line,) = told.faults
    assert "--clinician" in line
    assert "Dana (1)" in line
    assert "Gil (2)" in line
    assert len(people(boutwise)) == 2  # nobody was enrolled on the way


def test_two_clinicians_of_one_name_are_told_apart_by_number(boutwise: Boutwise) -> None:
    invite(boutwise, "clinician", "Dana")
    invite(boutwise, "clinician", "Dana")
    told = boutwise("invite", "--role", "client", "--name", "Ann", "--clinician", "Dana")
    assert told.code == 2
    invite(boutwise, "client", "Ann", "--clinician", "2")
    assert people(boutwise)[-1]["clinician"] == 2


def test_a_client_needs_a_clinician_first(boutwise: Boutwise) -> None:
    invite(boutwise, "admin", "Kim")
    told = boutwise("invite", "--role", "client", "--name", "Ann")
    assert (told.code, told.out) == (2, "")
    (line,) = told.faults
    assert "invite one first with --role clinician" in line


@pytest.mark.parametrize(
    ("words", "names"),
    [
        (["--role", "admin", "--name", ""], ["--name"]),
        (["--role", "admin", "--name", " \n "], ["--name"]),
        (["--role", "admin", "--name", "x" * (LONGEST_NAME + 1)], ["--name"]),
        (["--role", "admin", "--name", "\udcff"], ["--name"]),
        (["--role", "admin", "--name", "Kim", "--language", "tlh"], ["--language"]),
        (["--role", "admin", "--name", "Kim", "--language", ""], ["--language"]),
        (["--role", "admin", "--name", "Kim", "--clinician", "Dana"], ["--clinician"]),
        (
            ["--role", "admin", "--name", "", "--language", "x", "--clinician", "y"],
            ["--name", "--language", "--clinician"],
        ),
    ],
)
def test_an_invitation_that_cannot_be_is_refused_with_a_line_for_each_fault(
    boutwise: Boutwise, words: list[str], names: list[str]
) -> None:
    told = boutwise("invite", *words)
    assert (told.code, told.out) == (2, "")
    assert [line.split()[2] for line in told.faults] == names


def test_the_longest_name_is_taken(boutwise: Boutwise) -> None:
    invite(boutwise, "admin", "x" * LONGEST_NAME)
    assert people(boutwise)[0]["alias"] == "x" * LONGEST_NAME


def test_names_rest_encrypted_where_there_is_a_key(boutwise: Boutwise, tmp_path: Path) -> None:
    key = boutwise("key").out.strip()
    told = boutwise("invite", "--role", "admin", "--name", "Kim-of-the-hills", KEY=key)
    assert told.code == 0
    kept = b"".join(each.read_bytes() for each in tmp_path.glob("boutwise.db*"))
    assert b"people" in kept or b"person" in kept  # what is not secret is found there
    assert b"Kim-of-the-hills" not in kept
    assert json.loads(boutwise("people", "--json", KEY=key).out)[0]["alias"] == "Kim-of-the-hills"
