"""How much of it: sizes that fit the suite, and the variables that ask for the whole.

- `BOUTWISE_FAILURES`: places at which the scripted day fails, for each engine; `all` for every one.
- `BOUTWISE_STEPS`: steps of the stateful test (10000 or 1000000); `BOUTWISE_STEPS_ON=postgresql` plays
  them there.
- `BOUTWISE_ZONES=all`: every zone with clock changes, also those that share their rules with another.
- `BOUTWISE_BACKLOG`: updates that wait at the platform when the bot comes back.
- `BOUTWISE_NAUGHTY=all`: every string in every place where something can be typed.
- `BOUTWISE_DISORDER`: seeds of the test of duplicates and disorder.
"""

import os


def asked_for(name: str, otherwise: str) -> str:
    """The value of a switch of the test run."""
    return os.environ.get(name, otherwise)  # noqa: TID251 # a switch of the test run


FAILURES = asked_for("BOUTWISE_FAILURES", "4")
STEPS = int(asked_for("BOUTWISE_STEPS", "400"))
STEPS_ON = asked_for("BOUTWISE_STEPS_ON", "sqlite")
ZONES = asked_for("BOUTWISE_ZONES", "distinct")
BACKLOG = int(asked_for("BOUTWISE_BACKLOG", "600"))
DISORDER = int(asked_for("BOUTWISE_DISORDER", "3"))
NAUGHTY = asked_for("BOUTWISE_NAUGHTY", "")
