"""Whether somebody may tell an event at the chair, by the part they have in the case.

The table of events (`events/registry`) says which parts tell which kind. The phone offers by the same table; both are
held to `tests/shared/who-tells.json`.
"""

from __future__ import annotations

from collections.abc import Mapping

from cases.domain.access.roles import Role
from cases.domain.errors import NotAllowed
from cases.domain.events.kinds import EventKind
from cases.domain.events.registry import MAY_TELL, WORKING, Part

_INSTEAD: Mapping[Part, str] = {
    Part.OWN_STUDENT: "A supervisor says this. Ask one of them.",
    Part.LOOKING_IN: (
        "You look in on this case and do not work it: what is done is told by its student. "
        "Say 'I take over' first if you work it yourself."
    ),
}
_BY_SERVER_ALONE = "That is recorded here, when a plan is decided on or something is struck."
_ONLY_LOOKS = "You may look at this case. What is done is told by who works it, and decided by a supervisor."


def part_of(role: Role, *, own: bool, took_over: bool) -> Part:
    """What a member of the programme is to a case."""
    match role:
        case Role.STUDENT:
            return Part.OWN_STUDENT if own else Part.OTHER_STUDENT
        case Role.SUPERVISOR:
            return Part.TOOK_OVER if took_over else Part.LOOKING_IN
        case Role.COORDINATOR:
            return Part.COORDINATOR


def refuse_unless_tells(kind: EventKind, part: Part, *, at: tuple[str | int, ...] = ()) -> None:
    """Raises NotAllowed with what to do instead."""
    parts = MAY_TELL[kind]
    if part not in parts:
        raise NotAllowed(reason=_BY_SERVER_ALONE if not parts else _INSTEAD.get(part, _ONLY_LOOKS), at=at)


def refuse_unless_works(part: Part, what: str) -> None:
    """Raises NotAllowed for somebody who does not work the case; `what` begins the sentence that says so."""
    if part not in WORKING:
        raise NotAllowed(
            reason=f"{what} by who works the case: its student, or a supervisor who said 'I take over' at the chair."
        )
