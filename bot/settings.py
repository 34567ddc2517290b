"""The environment, read once and refused when bad. The only reader of it."""

from __future__ import annotations

import os
import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from sqlalchemy.engine import URL

from storage.engine import database_url
from storage.keys import Keyring

PREFIX = "BOUTWISE_"
PORT = re.compile("[0-9]{1,5}")
PATH = re.compile("[A-Za-z0-9._~/-]*")
LOOPBACK = frozenset({"127.0.0.1", "::1", "localhost"})
SECRET = re.compile("[A-Za-z0-9_-]{1,256}")
"""What the platform takes for a webhook's secret (the Bot API's page on setWebhook)."""
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
    """What was given cannot be used: one argument a fault, which names it and says what would work."""

    def __str__(self) -> str:
        return "\n".join(map(str, self.args))


@dataclass(frozen=True, slots=True)
class Webhook:
    """Where the platform posts updates to, where they come in, and what shows whose they are."""

    url: str
    bind: tuple[str, int]
    secret: str

    @property
    def path(self) -> str:
        """The path of `url`."""
        return urlsplit(self.url).path or "/"


@dataclass(frozen=True, slots=True)
class Settings:
    """What the environment says. `clock_start` is set for the stepped clock; `ops` is `None` when off.

    Without `webhook` the bot polls.
    """

    token: str
    bot_api_url: str
    database: URL
    webhook: Webhook | None
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
    """Every variable of ours with its value or default; secrets from their files where so given.

    BadSettingError with a line for each file that cannot be read.
    """
    values = dict(DEFAULTS)
    faults: list[str] = []
    for name in DEFAULTS:
        variable = PREFIX + name
        given = os.environ.get(variable)  # noqa: TID251 # the one home of this call
        path = os.environ.get(f"{variable}_FILE") if name in SECRETS else None  # noqa: TID251
        if given is None and path:
            try:
                given = Path(path).read_text(encoding="utf-8")
            except OSError as error:
                faults.append(f"{variable}_FILE cannot be read: {error.strerror}.")
            except UnicodeDecodeError:
                faults.append(f"{variable}_FILE is not text in UTF-8.")
        if given is not None:
            values[name] = given.strip()
    if faults:
        raise BadSettingError(*faults)
    return values


def read(**changed: str) -> Settings:
    """The settings of this process. `changed` stands for variables given by a command itself.

    BadSettingError with a line for each that cannot be used.
    """
    values = environment() | changed
    read_as: dict[str, Any] = {}
    faults: list[str] = []
    for name, parse in PARSERS.items():
        try:
            read_as[name] = parse(values[name])
        except BadSettingError as error:
            faults.append(f"{PREFIX}{name} {error}")
    if not faults:
        faults += _half_a_webhook(values)
    if faults:
        raise BadSettingError(*faults)
    return Settings(
        token=values["TOKEN"],
        bot_api_url=read_as["BOT_API_URL"],
        database=read_as["DATABASE_URL"],
        webhook=_webhook(read_as),
        ops=read_as["OPS_BIND"],
        send_rate=read_as["SEND_RATE"],
        key=values["KEY"],
        clock_start=read_as["CLOCK"],
    )


def _database(text: str) -> URL:
    try:
        return database_url(text)
    except ValueError as error:
        raise BadSettingError(f"cannot be used: {error}") from error


def _url(text: str) -> str:
    try:
        parts = urlsplit(text)
        good = parts.scheme in {"http", "https"} and bool(parts.hostname) and parts.port != 0
    except ValueError:  # a broken IPv6 address, or a port that is none
        good = False
    if not good or not text.isascii() or " " in text:
        raise BadSettingError("must be a web address such as http://127.0.0.1:8081.")
    return text.rstrip("/")


def _bind(text: str) -> tuple[str, int] | None:
    """`HOST:PORT` as a pair, `None` where empty."""
    if not text:
        return None
    host, _, port = text.rpartition(":")
    if not host or not PORT.fullmatch(port) or int(port) > 65535:  # noqa: PLR2004 # the largest port
        raise BadSettingError("must be HOST:PORT such as 127.0.0.1:8086, or empty.")
    return host.strip("[]"), int(port)


def _rate(text: str) -> float:
    try:
        rate = float(text)
    except ValueError:
        rate = 0.0
    if not 0 < rate <= 1000:  # noqa: PLR2004 # the platform's paid ceiling
        raise BadSettingError("must be messages a second, above 0 and up to 1000.")
    return rate


def _clock(text: str) -> datetime | None:
    if text == "system":
        return None
    kind, _, start = text.partition(":")
    try:
        at = datetime.fromisoformat(start)
        if kind == "stepped" and at.tzinfo is not None:
            return at.astimezone(UTC)
    except (ValueError, OverflowError):  # no instant, or one outside the years 1 to 9999
        pass
    raise BadSettingError("must be `system` or an instant such as `stepped:2027-03-08T05:00:00Z`.")


def _hook_url(text: str) -> str:
    """Empty for polling."""
    if not text:
        return ""
    try:
        parts = urlsplit(_url(text))
    except BadSettingError:
        parts = urlsplit("")
    if not (parts.scheme == "https" or (parts.scheme == "http" and parts.hostname in LOOPBACK)):
        raise BadSettingError("must be an https address such as https://clinic.example/updates.")
    if parts.query or parts.fragment or parts.username or not PATH.fullmatch(parts.path):
        raise BadSettingError("must be an address and a path of A-Z, a-z, 0-9 and ._~-/ alone.")
    return text


def _hook_secret(text: str) -> str:
    if text and not SECRET.fullmatch(text):
        raise BadSettingError("must be 1 to 256 of the characters A-Z, a-z, 0-9, _ and -.")
    return text


def _half_a_webhook(values: dict[str, str]) -> list[str]:
    """What is missing beside an address for the webhook, or must not be in it."""
    if not values["WEBHOOK_URL"]:
        return []
    faults = [
        f"{PREFIX}{name} must be set where {PREFIX}WEBHOOK_URL is: {why}."
        for name, why in (
            ("WEBHOOK_SECRET", "without it anybody could speak as a client"),
            ("WEBHOOK_BIND", "it says where updates come in, HOST:PORT"),
        )
        if not values[name]
    ]
    faults += [
        f"{PREFIX}WEBHOOK_URL must not hold {PREFIX}{name}: addresses are logged."
        for name in ("TOKEN", "WEBHOOK_SECRET")
        if values[name] and values[name] in values["WEBHOOK_URL"]
    ]
    return faults


def _webhook(read_as: dict[str, Any]) -> Webhook | None:
    if not read_as["WEBHOOK_URL"]:
        return None
    return Webhook(read_as["WEBHOOK_URL"], read_as["WEBHOOK_BIND"], read_as["WEBHOOK_SECRET"])


PARSERS: dict[str, Callable[[str], Any]] = {
    "BOT_API_URL": _url,
    "DATABASE_URL": _database,
    "WEBHOOK_URL": _hook_url,
    "WEBHOOK_BIND": _bind,
    "WEBHOOK_SECRET": _hook_secret,
    "OPS_BIND": _bind,
    "SEND_RATE": _rate,
    "CLOCK": _clock,
}
"""What reads each variable; the token is judged by the platform, the key by the database."""
