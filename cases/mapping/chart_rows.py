"""A case with all that is needed to show or plan it, in a fixed number of small questions to the database."""

from __future__ import annotations

from typing import Any
from uuid import UUID

from django.db.models import OuterRef, QuerySet, Subquery

from cases.models.external_ids import ExternalId
from cases.models.overrides import CautionOverride
from cases.models.prepared import Prepared, hand_out
from cases.models.readings import JunctionReading, LengthReading
from cases.models.teeth import Canal, Case, Root


def _case(case: UUID) -> QuerySet[Case]:
    return Case.objects.filter(pk=case).select_related("tooth", "patient", "student", "supervisor", "programme")


def _case_of_service(case: UUID, service: UUID) -> Case | None:
    """With the key by which the service knows it: no column of the case, so that this is no prepared query."""
    key = ExternalId.objects.filter(service=service, case=OuterRef("pk")).values("value")
    annotations: dict[str, Any] = {"external_id": Subquery(key)}  # the class says what it is of any other row
    return _case(case).annotate(**annotations).first()


_CASE = Prepared(_case)
_OVERRIDES = Prepared(
    lambda case: (
        CautionOverride.objects.filter(case=case)
        .select_related("canal", "supervisor", "withdrawn_by")
        .order_by("at", "pk")
    )
)
# A tooth has its case's id.
_ROOTS = Prepared(lambda case: Root.objects.filter(tooth=case).select_related("main_canal").order_by("name"))
_CANALS = Prepared(lambda case: Canal.objects.filter(tooth=case).select_related("root").order_by("place"))
_READINGS = Prepared(
    lambda case: LengthReading.objects.filter(canal__tooth=case).select_related("actor", "struck_by").order_by("number")
)
_JUNCTIONS = Prepared(
    lambda case: (
        JunctionReading.objects.filter(canal__tooth=case).select_related("actor", "struck_by").order_by("number")
    )
)


def chart(case_id: UUID, service_id: UUID | None = None) -> Case:
    """The case with its tooth, roots, canals, readings and overrides at hand, and the service's key for it.

    Raises Case.DoesNotExist.
    """
    case = _case_of_service(case_id, service_id) if service_id else _CASE.first(case_id)
    if case is None:
        raise Case.DoesNotExist
    canals = _CANALS(case_id)
    hand_out([case], "overrides", _OVERRIDES(case_id))
    hand_out([case.tooth], "roots", _ROOTS(case_id))
    hand_out([case.tooth], "canals", canals)
    hand_out(canals, "readings", _READINGS(case_id))
    hand_out(canals, "junctions", _JUNCTIONS(case_id))
    return case
