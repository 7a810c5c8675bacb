"""Records are only added to: in code, in bulk, through the administration."""

from __future__ import annotations

import pytest
from django.contrib import admin
from django.db import models
from django.http import HttpRequest
from django.test import Client

from cases.models import (
    BendInSpace,
    CanalPlan,
    Case,
    CautionOverride,
    Change,
    ChangeLog,
    JunctionReading,
    LengthReading,
    Person,
    PlanTexts,
    Review,
    ReviewRemark,
    Revocation,
    ToothPlanVersion,
    TreatmentEvent,
)
from cases.models.base import RecordFixed

RECORDS = [
    BendInSpace,
    CanalPlan,
    CautionOverride,
    Change,
    ChangeLog,
    JunctionReading,
    LengthReading,
    PlanTexts,
    Review,
    ReviewRemark,
    Revocation,
    ToothPlanVersion,
    TreatmentEvent,
]


def test_a_version_keeps_its_content(approved: ToothPlanVersion) -> None:
    texts, before = approved.texts, approved.output_text
    texts.packed = PlanTexts.of(approved, plan_input="{}", plan="{}").packed
    with pytest.raises(RecordFixed):
        texts.save()
    with pytest.raises(RecordFixed):
        texts.delete()
    approved.hash = "0" * 64
    with pytest.raises(RecordFixed):
        approved.save()
    with pytest.raises(RecordFixed):
        approved.save(update_fields=["hash", "state"])
    approved = ToothPlanVersion.objects.get(pk=approved.pk)
    assert (approved.hash == "0" * 64, approved.output_text) == (False, before)


def test_a_reading_keeps_what_was_read(molar: Case) -> None:
    reading = LengthReading.objects.filter(canal__tooth__case=molar).first()
    assert reading is not None
    reading.text = "{}"
    with pytest.raises(RecordFixed):
        reading.save()
    with pytest.raises(RecordFixed):
        reading.delete()


@pytest.mark.parametrize("model", RECORDS)
def test_nothing_changes_records_in_bulk(model: type[models.Model], db: None) -> None:
    rows = model._default_manager.all()
    with pytest.raises(RecordFixed):
        rows.update()
    with pytest.raises(RecordFixed):
        rows.delete()
    with pytest.raises(RecordFixed):
        rows.bulk_update([], ["pk"])


@pytest.mark.parametrize("model", [*RECORDS, Case])
def test_the_administration_shows_records_and_changes_none(model: type[models.Model]) -> None:
    shown = admin.site._registry[model]
    request = HttpRequest()
    request.user = Person(is_superuser=True, is_staff=True)
    assert not shown.has_add_permission(request)
    assert not shown.has_change_permission(request)
    assert not shown.has_delete_permission(request)


def test_the_administration_opens_a_version(approved: ToothPlanVersion, client: Client) -> None:
    client.force_login(Person.objects.create_superuser("root", "a-long-enough-one"))
    page = client.get(f"/admin/cases/toothplanversion/{approved.pk}/change/")
    assert page.status_code == 200
    assert approved.hash in page.content.decode()


def test_a_case_with_a_plan_cannot_be_deleted(approved: ToothPlanVersion) -> None:
    with pytest.raises(models.ProtectedError):
        approved.case.delete()
