"""What somebody is to a case, by its record."""

from __future__ import annotations

from cases.domain.access import who_tells
from cases.domain.access.roles import Role
from cases.domain.access.who_tells import refuse_unless_works
from cases.domain.events.kinds import EventKind
from cases.domain.events.registry import Part
from cases.domain.progress.taken_over import TakenOver
from cases.models import Case, Person
from cases.services.common.guard import actor_in


def part_of(person: Person, case: Case) -> Part:
    """What somebody is to a case, for events, which may come late. A supervisor who took over works the case until they
    give it back themselves, whatever else has ended it; the course sets aside what comes after that. Raises NotHere.
    """
    role = actor_in(person, case.programme_id).role
    took_over = role is Role.SUPERVISOR and _last_took_over(person, case)
    return who_tells.part_of(role, own=person.pk == case.student_id, took_over=took_over)


def _last_took_over(person: Person, case: Case) -> bool:
    kinds = (EventKind.TAKE_OVER, EventKind.GIVE_BACK)
    own = case.events.filter(actor=person, kind__in=kinds).order_by("-position")
    return own.values_list("kind", flat=True).first() == EventKind.TAKE_OVER


def after(kind: EventKind, part: Part) -> Part:
    """The teller's part after an event of theirs."""
    return {EventKind.TAKE_OVER: Part.TOOK_OVER, EventKind.GIVE_BACK: Part.LOOKING_IN}.get(kind, part)


def refuse_unless_works_now(person: Person, case: Case, what: str) -> None:
    """Raises NotAllowed for somebody who does not work the case at this moment, NotHere for somebody of another
    programme.
    """
    # Closing the visit ends a take-over as well.
    kinds = (EventKind.TAKE_OVER, EventKind.GIVE_BACK, EventKind.CLOSE)
    rows = case.events.filter(kind__in=kinds).order_by("position").values_list("kind", "actor_id")
    taken_over = TakenOver()
    for kind, actor in rows:
        taken_over.happened(EventKind(kind), str(actor))
    refuse_unless_works(_part(person, case, took_over=taken_over.by == str(person.pk)), what)


def refuse_unless_worked(person: Person, case: Case, what: str) -> None:
    """For what may come long after it was done: raises NotAllowed only for somebody who never worked the case, and
    NotHere for somebody of another programme.
    """
    took_over = case.events.filter(actor=person, kind=EventKind.TAKE_OVER).exists()
    refuse_unless_works(_part(person, case, took_over=took_over), what)


def _part(person: Person, case: Case, *, took_over: bool) -> Part:
    role: Role = actor_in(person, case.programme_id).role
    return who_tells.part_of(role, own=person.pk == case.student_id, took_over=took_over)
