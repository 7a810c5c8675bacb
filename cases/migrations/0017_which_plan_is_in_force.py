"""Says at the head of every case's events which plan its work began on: from here on the events alone say so."""

from __future__ import annotations

import json
from typing import Any
from uuid import UUID

from django.db import migrations
from django.db.models import F

from cases.domain.uuid7 import uuid7

HERE = UUID(int=0)
DECISIONS = ("replan", "release")  # recorded by the program itself; everything else was done by somebody
AWAY = 1_000_000  # further than any case has events: places are unique while they move


def say_which_plan_is_in_force(apps: Any, schema_editor: Any) -> None:
    """What moves down by one place keeps its order, and a device that knew so many events knows as many and one."""
    # Historical models have plain managers: rows that are only added to can be moved here, and nowhere else.
    Event, Review = (apps.get_model("cases", name) for name in ("TreatmentEvent", "Review"))
    Running = apps.get_model("cases", "RunningWork")
    approvals = Review.objects.filter(decision="approved").select_related("version").order_by("at")
    for case_id in approvals.order_by().values_list("version__case", flat=True).distinct().iterator():
        review = _ruled_first(Event.objects.filter(case=case_id), approvals.filter(version__case=case_id))
        begun_with = review.version
        _make_room(Event.objects.filter(case=case_id), Running.objects.filter(case=case_id))
        last = Event.objects.filter(case=case_id, device=HERE).order_by("-device_seq").first()
        made = Event.objects.create(
            id=uuid7(),
            sent_hash="",
            case_id=case_id,
            version=begun_with,
            position=1,
            actor_id=review.supervisor_id,
            device=HERE,
            device_seq=(last.device_seq if last else 0) + 1,
            device_time=review.at,
            seen_position=0,
            plan_hash=begun_with.hash,
            kind="replan",
            text=json.dumps({"kind": "replan", "replaces": begun_with.hash}, sort_keys=True, separators=(",", ":")),
        )
        Event.objects.filter(pk=made.pk).update(server_time=review.at)


def _ruled_first(events: Any, approvals: Any) -> Any:
    """The approval of the plan that was in force when the work began: the last one before anything was done.

    Where a new version has taken over since, it says itself which plan it replaced.
    """
    if taken_over := events.filter(kind="replan").order_by("position").first():
        replaced = json.loads(taken_over.text)["replaces"]
        return approvals.filter(version__hash=replaced).first() or approvals.first()
    done = events.exclude(kind__in=DECISIONS).order_by("position").first()
    before = approvals.filter(at__lte=done.server_time) if done else approvals
    return before.last() or approvals.first()


def _make_room(events: Any, running: Any) -> None:
    events.update(position=F("position") + AWAY)
    events.update(position=F("position") - AWAY + 1, seen_position=F("seen_position") + 1)
    running.update(position=F("position") + 1)


class Migration(migrations.Migration):
    dependencies = [
        ("cases", "0016_emergencies_corrected_and_facts_not_checked"),
    ]

    operations = [migrations.RunPython(say_which_plan_is_in_force, migrations.RunPython.noop)]
