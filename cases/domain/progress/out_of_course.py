"""Why something that was told moves nothing."""

from __future__ import annotations

from enum import StrEnum


class OutOfCourse(StrEnum):
    """Why one event moves nothing; it is kept and shown all the same."""

    OTHER_PLAN = "other_plan"
    NO_CANAL = "no_canal"
    CLOSED = "closed"
    HALTED = "halted"
    DAM_OFF = "dam_off"
    NOBODY_ON_SITE = "nobody_on_site"
    APPROVAL_LAPSED = "approval_lapsed"
    REVOKED = "revoked"
    """The approval of the plan had been withdrawn."""
    WITHHELD = "withheld"
    OTHER_STEP = "other_step"
    NO_SUCH_EXIT = "no_such_exit"
    NOTHING_ASKED = "nothing_asked"
    NOT_TO_UNDO = "not_to_undo"
    NOT_CHECKED = "not_checked"
    """What it says could not be checked."""
    NOT_WORKING = "not_working"
    """The supervisor who told it had taken over, and that has ended."""
