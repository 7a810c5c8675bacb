"""Access keys as their owners see them, and who a service acts for."""

from __future__ import annotations

from uuid import UUID

from django.db.models import QuerySet

from cases.domain.access.permissions import May
from cases.domain.errors import NotHere
from cases.models import AccessKey, Person, Service
from cases.models.prepared import Prepared
from cases.queries import seen

# What an address is of, by its first word, and how a case leads there.
_LEADS_TO = {
    "cases": "",
    "canals": "__tooth__canals",
    "readings": "__tooth__canals__readings",
    "junctions": "__tooth__canals__junctions",
    "plan-versions": "__versions",
    "overrides": "__overrides",
}


def _student_by(path: str) -> Prepared[Person]:
    return Prepared(
        lambda programme_id, id_: Person.objects.filter(**{"cases__programme": programme_id, f"cases{path}": id_})
    )


_STUDENTS = {word: _student_by(path) for word, path in _LEADS_TO.items()}


def is_of_a_case(word: str) -> bool:
    """Whether addresses that begin with the word lead to a case."""
    return word in _STUDENTS


def student_acted_for(service: Service, word: str, id_: UUID) -> Person:
    """The student of the case that an address is of, by its first word and its first id. Raises NotHere."""
    row = _STUDENTS[word].first(service.programme_id, id_) if word in _STUDENTS else None
    if row is None:
        raise NotHere(what="case")
    return row


def own(person: Person) -> QuerySet[AccessKey]:
    """Those that were not revoked, the newest first."""
    return (
        AccessKey.objects.filter(person=person, revoked_at=None).select_related("made_by").order_by("-made_at", "-pk")
    )


def of_services(person: Person, programme_id: UUID) -> QuerySet[AccessKey]:
    """Those of the programme's services that were not revoked. Raises NotHere and NotAllowed."""
    seen.refuse_unless_may(May.KEEP_KEYS, person, programme_id)
    rows = AccessKey.objects.filter(service__programme=programme_id, revoked_at=None)
    return rows.select_related("made_by").order_by("name", "-made_at", "-pk")
