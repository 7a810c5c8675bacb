"""The visit within a course: opened and closed, who is in the room, the dam, the sign-off that counts for one session.

A bench needs nobody in the room and no dam; there only closing and opening again count.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from cases.domain.events.payloads import SignOffExit
from cases.domain.events.visit_payloads import Dam
from planning.techniques.technique import Setting

CHECK = "visit/check"
"""Node of the sign-off on a visit that was closed."""
RENEW = "visit/renew"
"""Node of the sign-off that lets the approval count for another session."""


class Prerequisite(StrEnum):
    """What has to be there before any canal is worked."""

    CLOSED = "closed"
    HALTED = "halted"
    REVOKED = "revoked"
    """The approval of the plan in force was withdrawn."""
    DAM_OFF = "dam_off"
    """The dam is off or leaking, or nobody has said in this visit that it is on. No sign-off takes its place."""
    NOBODY_ON_SITE = "nobody_on_site"
    APPROVAL_LAPSED = "approval_lapsed"


@dataclass(slots=True, kw_only=True)
class Visit:
    """Where the visit stands. Each move says whether it moved anything."""

    setting: Setting
    closed: bool = False
    on_site: str = ""
    """Id of the licensed clinician in the room."""
    dam: Dam | None = None
    """As last said in this visit."""
    lapsed: bool = False
    """The approval ended with the last session and has to be renewed."""
    check_due: bool = False
    """Closed, and no supervisor has looked at it."""

    @property
    def clinic(self) -> bool:
        return self.setting is Setting.CLINIC

    def missing(self, *, halted: bool) -> tuple[Prerequisite, ...]:
        """What is missing before any canal is worked; the first of it is the reason for which a step is set aside."""
        stopped = (Prerequisite.HALTED,) if halted else ()
        if self.closed:
            # With the visit closed nobody is in the room and no dam is on: that needs no saying.
            return (Prerequisite.CLOSED, *stopped)
        if not self.clinic:
            return stopped
        absent = {
            Prerequisite.DAM_OFF: self.dam != "on",
            Prerequisite.NOBODY_ON_SITE: not self.on_site,
            Prerequisite.APPROVAL_LAPSED: self.lapsed,
        }
        return (*stopped, *(what for what, is_absent in absent.items() if is_absent))

    @property
    def sign_offs_due(self) -> tuple[str, ...]:
        """Nodes of the sign-offs that a supervisor still has to give."""
        return (CHECK,) if self.check_due else (RENEW,) if self.lapsed and not self.closed else ()

    def close(self) -> bool:
        if self.closed:
            return False
        self.closed, self.on_site, self.dam = True, "", None
        # In the clinic an approval counts for one session, and a supervisor looks at what was closed; a bench needs
        # neither.
        self.lapsed = self.check_due = self.clinic
        return True

    def reopen(self, on_site: str, *, protected: bool) -> bool:
        if not self.closed:
            return False
        self.closed = self.check_due = False
        self.on_site = on_site
        self.dam = "on" if protected else None
        return True

    def name(self, on_site: str) -> bool:
        """Somebody else may come into the room in the middle of a visit."""
        if self.closed:
            return False
        self.on_site = on_site
        return True

    def isolate(self, state: Dam) -> bool:
        if self.closed:
            return False
        self.dam = state
        return True

    def sign_off(self, node: str, exit_: SignOffExit) -> bool:
        """A supervisor's sign-off of the visit. Returned, it stays due."""
        if node not in self.sign_offs_due:
            return False
        if node == CHECK:
            self.check_due = exit_ != "approved"
        else:
            self.lapsed = exit_ != "approved"
        return True
