"""The tables. Declared with SQLModel, queried with SQLAlchemy Core; values in and out are the domain's."""

from storage.tables.base import Row, Secret, metadata, table
from storage.tables.care import (
    BoutRow,
    ClearanceRow,
    DayRow,
    EntryRow,
    FlagRow,
    HoldRow,
    PlanRow,
    ReportRow,
)
from storage.tables.people import (
    AuditRow,
    ClientRow,
    GuessRow,
    InvitationRow,
    PersonRow,
    QuestionRow,
    SettingRow,
)
from storage.tables.post import Arrival, InboxRow, OutboxRow

__all__ = [
    "Arrival",
    "AuditRow",
    "BoutRow",
    "ClearanceRow",
    "ClientRow",
    "DayRow",
    "EntryRow",
    "FlagRow",
    "GuessRow",
    "HoldRow",
    "InboxRow",
    "InvitationRow",
    "OutboxRow",
    "PersonRow",
    "PlanRow",
    "QuestionRow",
    "ReportRow",
    "Row",
    "Secret",
    "SettingRow",
    "metadata",
    "table",
]
