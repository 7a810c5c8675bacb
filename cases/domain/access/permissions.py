"""Who may do what away from the chair, all of it, in one table; at the chair `who_tells` says it.

What a person can *see* is decided by the queries.
"""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import dataclass
from enum import StrEnum

from cases.domain.access.roles import Role
from cases.domain.errors import NotAllowed


class May(StrEnum):
    OPEN_CASE = "open a case"
    CHART = "change the case and its canals"
    JUDGE_ANATOMY = "record unusual anatomy, or a canal as searched and not found"
    CORRECT_ALIAS = "correct the patient's alias"
    PLAN = "plan the case"
    SUBMIT = "submit or withdraw the plan"
    REVIEW = "decide on a plan"
    REVOKE = "withdraw an approval"
    SEE_WORKLIST = "see the plans that wait"
    OVERRIDE = "let the work go on in spite of a caution"
    KEEP_KITS = "change kits, techniques and figures of the programme"
    KEEP_KEYS = "make and revoke keys and clients of the programme's services"
    KEEP_WEBHOOKS = "keep webhooks of the programme"
    KEEP_PLATFORMS = "register the platforms of the programme's courses"
    PRACTISE = "practise on hidden canals"
    SET_PRACTICE = "set practice as a task"
    SEE_PRACTICE = "see practice"
    SEE_PEOPLE = "see who belongs to the programme"
    KEEP_PEOPLE = "invite people, change what they are in the programme, and end it"


@dataclass(frozen=True, slots=True, kw_only=True)
class Actor:
    """A person in one programme."""

    person_id: Hashable
    role: Role


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    roles: frozenset[Role]
    own: frozenset[Role] = frozenset()
    """Roles that may do so only in a case of their own."""
    otherwise: str


_STUDENT, _SUPERVISOR, _COORDINATOR = Role.STUDENT, Role.SUPERVISOR, Role.COORDINATOR
RULES: dict[May, Rule] = {
    May.OPEN_CASE: Rule(roles=frozenset({_STUDENT}), otherwise="Cases are opened by students of the programme."),
    May.CHART: Rule(
        roles=frozenset({_STUDENT, _SUPERVISOR}),
        own=frozenset({_STUDENT}),
        otherwise="A case is changed by its own student or by a supervisor.",
    ),
    May.JUDGE_ANATOMY: Rule(
        roles=frozenset({_SUPERVISOR}),
        otherwise="A supervisor records this. Ask one to look at the case.",
    ),
    May.CORRECT_ALIAS: Rule(
        roles=frozenset({_STUDENT, _SUPERVISOR, _COORDINATOR}),
        own=frozenset({_STUDENT}),
        otherwise="An alias is corrected by the student of the case, a supervisor or the coordinator.",
    ),
    May.PLAN: Rule(
        roles=frozenset({_STUDENT}), own=frozenset({_STUDENT}), otherwise="A case is planned by its own student."
    ),
    May.SUBMIT: Rule(
        roles=frozenset({_STUDENT}),
        own=frozenset({_STUDENT}),
        otherwise="A plan is submitted and withdrawn by the student of the case.",
    ),
    May.REVIEW: Rule(
        roles=frozenset({_SUPERVISOR}), otherwise="A plan is approved or returned by a supervisor, not by students."
    ),
    May.REVOKE: Rule(
        roles=frozenset({_SUPERVISOR, _COORDINATOR}),
        otherwise="An approval is withdrawn by the supervisor who gave it, or by a coordinator.",
    ),
    May.OVERRIDE: Rule(
        roles=frozenset({_SUPERVISOR}), otherwise="A supervisor lets the work go on, with a reason. Ask one."
    ),
    May.SEE_WORKLIST: Rule(
        roles=frozenset({_SUPERVISOR, _COORDINATOR}), otherwise="The list of waiting plans is for supervisors."
    ),
    May.KEEP_KITS: Rule(
        roles=frozenset({_COORDINATOR}), otherwise="Kits, techniques and figures are kept by the coordinator."
    ),
    May.KEEP_KEYS: Rule(
        roles=frozenset({_COORDINATOR}), otherwise="Keys and clients of services are kept by the coordinator."
    ),
    May.KEEP_WEBHOOKS: Rule(
        roles=frozenset({_COORDINATOR}),
        otherwise="Webhooks are kept by the coordinator, or by the service itself.",
    ),
    May.KEEP_PLATFORMS: Rule(
        roles=frozenset({_COORDINATOR}), otherwise="Platforms of courses are registered by the coordinator."
    ),
    May.PRACTISE: Rule(roles=frozenset({_STUDENT}), otherwise="Practice is for students of the programme."),
    May.SET_PRACTICE: Rule(roles=frozenset({_SUPERVISOR}), otherwise="Practice is set as a task by supervisors."),
    May.SEE_PRACTICE: Rule(
        roles=frozenset({_STUDENT, _SUPERVISOR}),
        otherwise="Practice is seen by the student who does it and by supervisors.",
    ),
    May.SEE_PEOPLE: Rule(
        roles=frozenset({_SUPERVISOR, _COORDINATOR}), otherwise="Who belongs to the programme is for supervisors."
    ),
    May.KEEP_PEOPLE: Rule(
        roles=frozenset({_COORDINATOR}), otherwise="Who belongs to the programme is looked after by the coordinator."
    ),
}


def may(what: May, actor: Actor, *, student_id: Hashable | None = None) -> bool:
    """True where the actor may; `student_id` is the student whose case it is about."""
    rule = RULES[what]
    if actor.role not in rule.roles:
        return False
    return actor.role not in rule.own or actor.person_id == student_id


def refuse_unless(what: May, actor: Actor, *, student_id: Hashable | None = None) -> None:
    """Raises NotAllowed where the actor may not."""
    if not may(what, actor, student_id=student_id):
        raise NotAllowed(reason=RULES[what].otherwise)
