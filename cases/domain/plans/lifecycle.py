"""The life of a plan version: its states, and the moves between them as a table.

A case has at most one version that is not superseded. An approval belongs to exactly one version: another version
of the plan, or a change of the case, needs a new one; but in the middle of the work it is carried over, visibly, to a
version in which nothing has changed but lengths, by little.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from cases.domain.access.roles import Role
from cases.domain.errors import MoveNotPossible


class PlanState(StrEnum):
    DRAFT = "draft"
    WAITING = "waiting"
    """Submitted, and not decided yet."""
    APPROVED = "approved"
    RETURNED = "returned"
    REVOKED = "revoked"
    """It was approved, and whoever gave the approval or a coordinator has withdrawn that."""
    SUPERSEDED = "superseded"
    """Another version stands in its place."""


class Verb(StrEnum):
    SUBMIT = "submit"
    WITHDRAW = "withdraw"
    APPROVE = "approve"
    RETURN = "return"
    REVOKE = "revoke"
    """Withdraws an approval; `withdraw` takes back the asking for one."""
    CARRY_OVER = "carry_over"
    """The approval of an earlier version holds for it: nothing but lengths moved, by little."""
    SUPERSEDE = "supersede"
    """Another version takes its place."""
    TAKE_UP_AGAIN = "take_up_again"
    """The same content is proposed once more: it has to be asked for anew."""


class Decision(StrEnum):
    """What a supervisor decides on a submitted plan."""

    APPROVED = "approved"
    RETURNED = "returned"


@dataclass(frozen=True, slots=True, kw_only=True)
class Move:
    verb: Verb
    since: frozenset[PlanState]
    to: PlanState
    by: Role
    done: str
    """The verb as something done to the plan, for sentences."""


_S = PlanState
MOVES: dict[Verb, Move] = {
    move.verb: move
    for move in (
        Move(
            verb=Verb.SUBMIT,
            since=frozenset({_S.DRAFT, _S.RETURNED, _S.REVOKED}),
            to=_S.WAITING,
            by=Role.STUDENT,
            done="submitted",
        ),
        Move(verb=Verb.WITHDRAW, since=frozenset({_S.WAITING}), to=_S.DRAFT, by=Role.STUDENT, done="withdrawn"),
        Move(verb=Verb.APPROVE, since=frozenset({_S.WAITING}), to=_S.APPROVED, by=Role.SUPERVISOR, done="approved"),
        Move(verb=Verb.RETURN, since=frozenset({_S.WAITING}), to=_S.RETURNED, by=Role.SUPERVISOR, done="returned"),
        Move(verb=Verb.REVOKE, since=frozenset({_S.APPROVED}), to=_S.REVOKED, by=Role.SUPERVISOR, done="revoked"),
        Move(
            verb=Verb.CARRY_OVER,
            since=frozenset({_S.DRAFT}),
            to=_S.APPROVED,
            by=Role.STUDENT,
            done="carried over to",
        ),
        Move(
            verb=Verb.SUPERSEDE,
            since=frozenset({_S.DRAFT, _S.WAITING, _S.APPROVED, _S.RETURNED, _S.REVOKED}),
            to=_S.SUPERSEDED,
            by=Role.STUDENT,
            done="superseded",
        ),
        Move(
            verb=Verb.TAKE_UP_AGAIN,
            since=frozenset({_S.WAITING, _S.APPROVED, _S.SUPERSEDED}),
            to=_S.DRAFT,
            by=Role.STUDENT,
            done="taken up again",
        ),
    )
}

_WAY_OUT = {
    _S.DRAFT: "It has not been submitted.",
    _S.WAITING: "It waits for a supervisor.",
    _S.APPROVED: "It is decided; a changed plan is asked for as a new version.",
    _S.REVOKED: "Its approval was withdrawn; the student submits it again, changed or not.",
    _S.RETURNED: "It is decided; the student submits it again, changed or not.",
    _S.SUPERSEDED: "Another version stands in its place: use that one.",
}


def after(state: PlanState, verb: Verb) -> PlanState:
    """The state a move leads to. Raises MoveNotPossible."""
    move = MOVES[verb]
    if state not in move.since:
        raise MoveNotPossible(state=state.value, done=move.done, way_out=_WAY_OUT[state])
    return move.to
