"""The environment, read once and refused when bad. The only reader of it."""

from __future__ import annotations

import os
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from urllib.parse import urlsplit

from sqlalchemy.engine import URL

from storage.engine import database_url
from storage.keys import Keyring

PREFIX = "BOUTWISE_"
SECRETS = ("TOKEN", "KEY", "WEBHOOK_SECRET", "DATABASE_URL")
"""Variables that may also be given as `NAME_FILE`, the path of a file that holds the value."""
DEFAULTS = {
    "TOKEN": "",
    "BOT_API_URL": "https://api.telegram.org",
    "DATABASE_URL": "sqlite:///boutwise.db",
    "WEBHOOK_URL": "",
    "WEBHOOK_BIND": "",
    "WEBHOOK_SECRET": "",
    "OPS_BIND": "127.0.0.1:8086",
    "SEND_RATE": "25",
    "KEY": "",
    "CLOCK": "system",
}


class BadSettingError(Exception):
    """A variable whose value cannot be used; the message names it and says what would work."""


@dataclass(frozen=True, slots=True)
class Settings:
    """What the environment says. `clock_start` is set for the stepped clock; `ops` is `None` when off."""

    token: str
    bot_api_url: str
    database: URL
    ops: tuple[str, int] | None
    send_rate: float
    key: str
    clock_start: datetime | None

    def keyring(self) -> Keyring:
        """The keys for encryption at rest. BadSettingError where none is given and `none` is not said."""
        if not self.key:
            raise BadSettingError(
                "BOUTWISE_KEY is not set. `boutwise key` makes one; BOUTWISE_KEY=none keeps data readable."
            )
        try:
            return Keyring.parse(self.key)
        except ValueError as error:
            raise BadSettingError(f"BOUTWISE_KEY: {error}") from error


def environment() -> dict[str, str]:
    """Every variable of ours with its value or default; secrets from their files where so given."""
    values = dict(DEFAULTS)
    for name in DEFAULTS:
        variable = PREFIX + name
        given = os.environ.get(variable)  # noqa: TID251 # the one home of this call
        path = os.environ.get(f"{variable}_FILE") if name in SECRETS else None  # noqa: TID251
        if given is None and path:
            given = _file(variable, path)
        if given is not None:
            values[name] = given.strip()
    return values


def _file(variable: str, path: str) -> str:
    try:
        return Path(path).read_text(encoding="utf-8")
    except OSError as error:
        raise BadSettingError(f"{variable}_FILE cannot be read: {error.strerror}.") from error


def read(**changed: str) -> Settings:
    """The settings of this process. `changed` stands for variables given by a command itself."""
    values = environment() | changed
    if values["WEBHOOK_URL"]:
        raise BadSettingError(
            "BOUTWISE_WEBHOOK_URL: webhooks are not served yet; leave it unset to use long polling."
        )
    return Settings(
        token=values["TOKEN"],
        bot_api_url=_url("BOT_API_URL", values["BOT_API_URL"]),
        database=_database(values["DATABASE_URL"]),
        ops=bind("OPS_BIND", values["OPS_BIND"]),
        send_rate=_rate(values["SEND_RATE"]),
        key=values["KEY"],
        clock_start=_clock(values["CLOCK"]),
    )


def _database(text: str) -> URL:
    try:
        return database_url(text)
    except ValueError as error:
        raise BadSettingError(f"BOUTWISE_DATABASE_URL: {error}") from error


def _url(name: str, text: str) -> str:
    parts = urlsplit(text)
    if parts.scheme not in {"http", "https"} or not parts.netloc:
        raise BadSettingError(
            f"{PREFIX}{name} must be a web address such as http://127.0.0.1:8081."
        )
    return text.rstrip("/")


def bind(name: str, text: str) -> tuple[str, int] | None:
    """`HOST:PORT` as a pair, `None` where empty."""
    if not text:
        return None
    host, _, port = text.rpartition(":")
    if not host or not port.isdecimal() or int(port) > 65535:  # noqa: PLR2004 # the largest port
        raise BadSettingError(f"{PREFIX}{name} must be HOST:PORT such as 127.0.0.1:8086, or empty.")
    return host.strip("[]"), int(port)


def _rate(text: str) -> float:
    try:
        rate = float(text)
    except ValueError:
        rate = 0.0
    if not 0 < rate <= 1000:  # noqa: PLR2004 # the platform's paid ceiling
        raise BadSettingError(
            "BOUTWISE_SEND_RATE must be messages a second, above 0 and up to 1000."
        )
    return rate


def _clock(text: str) -> datetime | None:
    if text == "system":
        return None
    kind, _, start = text.partition(":")
    try:
        at = datetime.fromisoformat(start)
    except ValueError:
        at = None
    if kind != "stepped" or at is None or at.tzinfo is None:
        raise BadSettingError(
            "BOUTWISE_CLOCK must be `system` or an instant such as `stepped:2027-03-08T05:00:00Z`."
        )
    return at.astimezone(UTC)
