"""Who may tell what at the chair, all of it, in one table: by kind of event and by the part one has in the case.

The phone offers by the same table; both are held to `tests/shared/who-tells.json`.
"""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum

from cases.domain.access.roles import Role
from cases.domain.errors import NotAllowed
from cases.domain.events.kinds import EventKind


class Part(StrEnum):
    """What somebody is to one case."""

    OWN_STUDENT = "own_student"
    OTHER_STUDENT = "other_student"
    LOOKING_IN = "looking_in"
    """A supervisor of the programme who does not work the case."""
    TOOK_OVER = "took_over"
    """A supervisor who said so and has not given it back."""
    COORDINATOR = "coordinator"
    STRANGER = "stranger"


_NOBODY: frozenset[Part] = frozenset()
"""The program itself records it."""
_WORKING = frozenset({Part.OWN_STUDENT, Part.TOOK_OVER})
_SUPERVISING = frozenset({Part.LOOKING_IN, Part.TOOK_OVER})
_ANY_OF_THEM = _WORKING | _SUPERVISING

MAY_TELL: Mapping[EventKind, frozenset[Part]] = {
    EventKind.STEP: _WORKING,
    EventKind.ANSWER: _WORKING,
    EventKind.READING: _WORKING,
    EventKind.SIGN_OFF: _SUPERVISING,
    EventKind.INSPECTED: _WORKING,
    EventKind.TURN: _WORKING,
    EventKind.PAUSE: _ANY_OF_THEM,
    EventKind.EMERGENCY: _ANY_OF_THEM,
    EventKind.CORRECTED: _ANY_OF_THEM,
    EventKind.RESUME: _SUPERVISING,
    EventKind.CLOSE: _WORKING,
    EventKind.REOPEN: _WORKING,
    EventKind.REPLAN: _NOBODY,
    EventKind.REVOKED: _NOBODY,
    EventKind.RELEASE: _NOBODY,
    EventKind.STRUCK: _NOBODY,
    EventKind.ASK: _WORKING,
    EventKind.COME: _SUPERVISING,
    EventKind.WANTED: _SUPERVISING,
    EventKind.TAKE_OVER: _SUPERVISING,
    EventKind.GIVE_BACK: frozenset({Part.TOOK_OVER}),
    EventKind.ON_SITE: _WORKING,
    EventKind.DAM: _WORKING,
    EventKind.IMAGE: _WORKING,
    EventKind.IRRIGATED: _WORKING,
    EventKind.NOTE: _ANY_OF_THEM,
    # It names one's own entry alone.
    EventKind.UNDO: _ANY_OF_THEM,
}

OF_WORK = frozenset(kind for kind, parts in MAY_TELL.items() if parts == _WORKING)
"""Told by who works the case alone."""
BY_SUPERVISOR = frozenset(kind for kind, parts in MAY_TELL.items() if parts == _SUPERVISING)
"""Told by supervisors alone, whoever works the case."""

_INSTEAD: Mapping[Part, str] = {
    Part.OWN_STUDENT: "A supervisor says this. Ask for their word.",
    Part.LOOKING_IN: (
        "You look in on this case and do not work it: what is done is told by its student. "
        "Say 'I take over' first if you work it yourself."
    ),
}
_FROM_HERE = "That is recorded here, when a plan is decided on or something is struck."
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
        raise NotAllowed(reason=_FROM_HERE if not parts else _INSTEAD.get(part, _ONLY_LOOKS), at=at)


def refuse_unless_works(part: Part, what: str) -> None:
    """Raises NotAllowed for something that only who works the case does; `what` says it as the start of a sentence."""
    if part not in _WORKING:
        raise NotAllowed(
            reason=f"{what} by who works the case: its student, or a supervisor who said 'I take over' at the chair."
        )
