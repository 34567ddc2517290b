"""The tables. Declared with SQLModel, queried with SQLAlchemy Core; values in and out are the domain's."""

from storage.tables.base import Row, Secret, metadata, table
from storage.tables.care import (
    BoutRow,
    ClearanceRow,
    CompanionEntryRow,
    DayRow,
    EntryRow,
    FlagRow,
    HoldRow,
    PauseRow,
    PlanRow,
    ReportRow,
    WeekRow,
)
from storage.tables.people import (
    AuditRow,
    ClientRow,
    CoverRow,
    DigestRow,
    GuessRow,
    InvitationRow,
    PersonRow,
    QuestionRow,
    SettingRow,
    StaffRow,
)
from storage.tables.post import Arrival, InboxRow, OutboxRow
from storage.tables.sharing import DepartureRow, LeaseRow

__all__ = [
    "Arrival",
    "AuditRow",
    "BoutRow",
    "ClearanceRow",
    "ClientRow",
    "CompanionEntryRow",
    "CoverRow",
    "DayRow",
    "DepartureRow",
    "DigestRow",
    "EntryRow",
    "FlagRow",
    "GuessRow",
    "HoldRow",
    "InboxRow",
    "InvitationRow",
    "LeaseRow",
    "OutboxRow",
    "PauseRow",
    "PersonRow",
    "PlanRow",
    "QuestionRow",
    "ReportRow",
    "Row",
    "Secret",
    "SettingRow",
    "StaffRow",
    "WeekRow",
    "metadata",
    "table",
]
