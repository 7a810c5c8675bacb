"""A case as another system sends it, by that system's own key."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any
from uuid import UUID

from django.db import transaction

from cases.domain.errors import ChangedSince, NotUsable
from cases.models import Case, Service
from cases.models.clients import Key
from cases.services.charting import cases
from cases.services.common import external_ids
from cases.services.people import access_keys
from planning import anatomy
from planning.anatomy import ToothName
from planning.foundation.errors import PlanningError


@transaction.atomic
def put(
    *,
    service: Service,
    key: Key | None,
    external_id: str,
    student_id: UUID,
    tooth: ToothName,
    patient_alias: str,
    setting: str,
    seen_revision: int | None,
    alias_is_no_name: bool = False,
    facts: Mapping[str, Any],
) -> tuple[Case, bool]:
    """The case that the service knows by the key, with these facts, and False; a new one of the student and True.

    Facts that are not sent stay. Raises what `external_ids.note`, `access_keys.whose_case`, `cases.open_case` and
    `cases.change_case` do, and NotUsable for another student or tooth than the case has.
    """
    external_ids.hold(service)
    programme_id = service.programme_id
    student = access_keys.whose_case(asker=service, key=key, programme_id=programme_id, named=student_id)
    alias: dict[str, Any] = {"patient_alias": patient_alias, "alias_is_no_name": alias_is_no_name}
    row = Case.objects.filter(external_ids__service=service, external_ids__value=external_id).first()
    if row is not None:
        _refuse_another(row, student_id, tooth)
        changes = {**facts, **alias, "setting": setting}
        return cases.change_case(actor=student, case=row, seen_revision=seen_revision, changes=changes), False
    if seen_revision is not None:
        raise ChangedSince(what="This case")
    row, _ = cases.open_case(actor=student, programme_id=programme_id, tooth=tooth, setting=setting, **alias)
    external_ids.note(service=service, subject=row, value=external_id)
    return cases.change_case(actor=student, case=row, seen_revision=None, changes=facts), True


def _refuse_another(case: Case, student_id: UUID, tooth: ToothName) -> None:
    try:
        iso = anatomy.find(tooth).iso
    except PlanningError as refusal:
        raise refusal.below("tooth") from None
    if case.student_id != student_id:
        raise NotUsable(reason="This case is another student's. A case stays with its student.", at=("student_id",))
    if case.tooth.iso != iso:
        raise NotUsable(reason=f"This case is of tooth {case.tooth.iso}. Another tooth is another case.", at=("tooth",))
