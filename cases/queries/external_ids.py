"""What a service knows by keys of its own. Nobody else sees them."""

from __future__ import annotations

from typing import TypeVar, cast

from django.db.models import Model, OuterRef, QuerySet, Subquery

from cases.domain.errors import NotAllowed, NotHere
from cases.models import Case, ExternalId, Kit, Membership, Service
from cases.queries.seen import Asker, service_of

Row = TypeVar("Row", bound=Model)
# Of each table that is listed: the kind of thing, and how a row leads to it.
_LEADS_TO: dict[type[Model], tuple[str, str]] = {
    Case: ("case", ""),
    Membership: ("person", "person__"),
    Kit: ("kit", ""),
}


def own_service(asker: Asker) -> Service:
    """The service that asks. Raises NotAllowed for a person, who has no such keys."""
    service = service_of(asker)
    if service is None:
        raise NotAllowed(reason="External ids are for services, each with its own. Ask with a key of a service.")
    return service


def known(asker: Asker, rows: QuerySet[Row]) -> QuerySet[Row]:
    """The same rows, each with the `external_id` that the asking service has for it."""
    service = service_of(asker)
    if service is None:
        return rows
    kind, path = _LEADS_TO[rows.model]
    key = ExternalId.objects.filter(service=service, **{kind: OuterRef(f"{path}pk")}).values("value")
    return cast("QuerySet[Row]", rows.annotate(external_id=Subquery(key)))  # the same kind of rows, whatever stubs say


def by_external_id(asker: Asker, rows: QuerySet[Row], value: str) -> QuerySet[Row]:
    """That of the rows which the asking service knows by this key. Raises NotAllowed."""
    _, path = _LEADS_TO[rows.model]
    return rows.filter(**{f"{path}external_ids__service": own_service(asker), f"{path}external_ids__value": value})


def case_of(service: Service, value: str) -> Case:
    """The case that the service knows by this key. Raises NotHere."""
    row = Case.objects.filter(external_ids__service=service, external_ids__value=value).first()
    if row is None:
        raise NotHere(what="case")
    return row
