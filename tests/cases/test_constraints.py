"""What the database itself refuses, whatever the code does."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from django.db import IntegrityError, transaction
from django.utils import timezone

from cases.domain.uuid7 import uuid7
from cases.models import (
    Canal,
    CanalPlan,
    Case,
    Image,
    Kit,
    KitInstrument,
    Membership,
    Person,
    Programme,
    Review,
    ToothPlanVersion,
    TreatmentEvent,
)
from tests.cast import canal_of


def refused(write: Callable[[], Any], name: str) -> None:
    """The write fails for the constraint of that name."""
    with pytest.raises(IntegrityError) as error, transaction.atomic():
        write()
    # SQLite names the columns of a unique constraint and not the constraint.
    message = str(error.value)
    assert name in message or "UNIQUE" in message, message


def another(version: ToothPlanVersion, **differences: Any) -> ToothPlanVersion:
    """A copy of the version, unsaved."""
    fields = {f.attname: getattr(version, f.attname) for f in version._meta.concrete_fields}
    return ToothPlanVersion(**(fields | {"id": uuid7(), "number": 2, "hash": "0" * 64} | differences))


def test_a_person_has_one_role_in_a_programme(priya: Person, programme: Programme) -> None:
    second = Membership(person=priya, programme=programme, role="supervisor")
    refused(lambda: second.save(), "one_role_in_a_programme")


def test_only_one_version_stands(proposed: ToothPlanVersion) -> None:
    refused(lambda: another(proposed).save(force_insert=True), "one_version_stands")


def test_one_content_is_one_version(proposed: ToothPlanVersion) -> None:
    twin = another(proposed, hash=proposed.hash, state="superseded")
    refused(lambda: twin.save(force_insert=True), "version_content_unique")


def test_nothing_is_approved_that_was_not_submitted(proposed: ToothPlanVersion) -> None:
    proposed.state, proposed.decided_at = "approved", timezone.now()
    refused(lambda: proposed.save(update_fields=["state", "decided_at"]), "version_submitted_before_decided")


def test_a_state_nobody_knows(proposed: ToothPlanVersion) -> None:
    proposed.state = "blessed"
    refused(lambda: proposed.save(update_fields=["state"]), "version_state_known")


def test_an_asking_is_decided_once(approved: ToothPlanVersion, amari: Person) -> None:
    second = Review(version=approved, asked=approved.asked, supervisor=amari, decision="returned", sent_hash="")
    refused(lambda: second.save(), "decided_once_per_asking")


def test_no_end_of_a_canal_plan_lies_past_its_stop(proposed: ToothPlanVersion) -> None:
    row = CanalPlan(
        version=proposed,
        place=9,
        canal="X",
        length_state="settled",
        stop_um=20_000,
        end_um=20_500,
        final_size=30,
        final_taper=4,
    )
    refused(lambda: row.save(), "canal_plan_never_past_the_stop")


def test_a_canals_name_is_its_own(opened: Case) -> None:
    canal = canal_of(opened, "MB2")
    canal.name = "MB1"
    refused(lambda: canal.save(), "canal_name_unique")


def test_nobody_supervises_their_own_case(opened: Case, priya: Person) -> None:
    opened.supervisor = priya
    refused(lambda: opened.save(), "case_supervisor_not_student")


def test_an_instruments_cutting_part_fits_it(kit: Kit) -> None:
    row = KitInstrument(kit=kit, size=11, taper=2, motion="hand", use="hand", length_um=20_000, cutting_part_um=21_000)
    refused(lambda: row.save(), "instrument_cutting_part_fits")


def test_events_have_places_of_their_own(proposed: ToothPlanVersion, priya: Person) -> None:
    def event(**more: Any) -> TreatmentEvent:
        fields: dict[str, Any] = {"position": 1, "device": uuid7(), "device_seq": 1, "seen_position": 0, "kind": "note"}
        about = {"case": proposed.case, "version": proposed, "actor": priya, "plan_hash": proposed.hash}
        return TreatmentEvent(**(about | fields | more), device_time=timezone.now(), text="{}", sent_hash="")

    event().save()
    refused(lambda: event().save(), "event_position_unique")
    refused(lambda: event(position=2, seen_position=2).save(), "event_saw_only_earlier")
    refused(lambda: event(position=2, kind="guess").save(), "event_kind_known")


def an_image(case: Case, person: Person, **more: Any) -> Image:
    fields = {"case": case, "taken_by": person, "device_time": timezone.now(), "purpose": "other", "sent_bytes": 1}
    return Image(**(fields | more))


def test_an_image_is_removed_by_somebody_for_a_reason_and_leaves_nothing(opened: Case, priya: Person) -> None:
    removal = {"removed_by": priya, "removed_at": timezone.now(), "removed_for": "not_usable"}
    an_image(opened, priya, state="removed", **removal).save()
    for wrong in (
        {"state": "removed"},
        {"state": "removed", **removal, "removed_by": None},
        {"state": "removed", **removal, "removed_for": "somebody"},
        {"state": "removed", **removal, "stored_bytes": 1},
        {"state": "removed", **removal, "has_data_set": True},
        {"state": "awaited", **removal},
    ):
        refused(an_image(opened, priya, **wrong).save, "image_removed_says_why")


def test_who_looked_at_an_image_did_so_at_some_time(opened: Case, priya: Person) -> None:
    refused(an_image(opened, priya, checked_by=priya).save, "image_checked_by_somebody")
    refused(an_image(opened, priya, checked_at=timezone.now()).save, "image_checked_by_somebody")


def test_a_canal_that_was_measured_stays(molar: Case) -> None:
    with pytest.raises(Exception, match="referenced through protected"), transaction.atomic():
        Canal.objects.filter(tooth__case=molar, name="P").delete()
