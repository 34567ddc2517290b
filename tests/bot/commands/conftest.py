"""The command line in the test's own process, in an empty folder, with an environment of its own."""

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest
from sqlalchemy import URL

from bot.cli import main


@dataclass(frozen=True, slots=True)
class Told:
    """How a command ended."""

    code: int
    out: str
    err: str

    @property
    def faults(self) -> list[str]:
        """Its lines on standard error."""
        return self.err.splitlines()


Boutwise = Callable[..., Told]


@pytest.fixture
def boutwise(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> Boutwise:
    """`boutwise("people", "--json", KEY="none")`: a command with its settings, and what it told.

    Without `KEY` and `OPS_BIND` it has no encryption and no operations server; `None` unsets a setting.
    """
    # A developer's own settings change nothing; loopback needs no certificates, whose loading is slow.
    for name in list(os.environ):  # noqa: TID251
        if name.startswith("BOUTWISE_") or name == "SSL_CERT_FILE":
            monkeypatch.delenv(name)
    monkeypatch.setenv("SSL_CERT_DIR", str(tmp_path))
    monkeypatch.setenv("PTB_TIMEDELTA", "true")  # the library warns of a coming change of its own
    monkeypatch.setenv("NO_PROXY", "*")
    monkeypatch.chdir(tmp_path)

    def run(*words: str, **settings: str | None) -> Told:
        given: dict[str, str | None] = {"KEY": "none", "OPS_BIND": "", **settings}
        with monkeypatch.context() as environment:
            # What they set up would outlive the command, and change the logs of other tests.
            environment.setattr("bot.commands.run.set_up_logging", lambda: None)
            environment.setattr("bot.commands.rehearse.set_up_logging", lambda: None)
            for name, value in given.items():
                if value is not None:
                    environment.setenv(f"BOUTWISE_{name}", value)
            try:
                code = main(words)
            except SystemExit as stopped:  # argparse ends so
                code = int(stopped.code or 0)
        told = capsys.readouterr()
        assert "Traceback" not in told.err
        return Told(code, told.out, told.err)

    return run


def plain(url: URL) -> str:
    """A database's address as a setting gives it."""
    return url.render_as_string(hide_password=False)
