"""A row that is put whole or added is the row that Django saves, which is the judge."""

from __future__ import annotations

import pytest
from django.db import connection
from django.forms import model_to_dict
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from cases.domain.uuid7 import uuid7
from cases.models import Person, RunningWork, ToothPlanVersion, TreatmentEvent
from cases.models.base import RecordFixed
from cases.models.whole_rows import NewRows, WholeRows
from tests.cases.test_treatment import event, record


@pytest.mark.parametrize("there", [True, False])
def test_a_row_is_stored_whether_or_not_it_is_there(priya: Person, approved: ToothPlanVersion, there: bool) -> None:
    record(priya, approved, event(approved, 1))
    before, row = RunningWork.objects.get(), RunningWork.objects.get()
    row.position, row.halted, row.text, row.learned = 7, True, "{}", "é"
    row.waiting_since, row.step_since, row.on_site = timezone.now(), None, priya
    row.save()
    saved = _all_of_it()
    if there:
        before.save()
    else:
        row.delete()
        row.pk = before.pk
    with CaptureQueriesContext(connection) as asked:
        WholeRows(RunningWork).put(row)
    assert (_all_of_it(), len(asked)) == (saved, 1)


def _all_of_it() -> dict[str, object]:
    return model_to_dict(RunningWork.objects.get())


def test_rows_are_added_as_django_adds_them(priya: Person, approved: ToothPlanVersion) -> None:
    (row,) = record(priya, approved, event(approved, 1))
    row = TreatmentEvent.objects.get(pk=row.pk)
    bulk, added = ([_after(row, seq) for seq in seqs] for seqs in ((2, 3), (4, 5)))
    TreatmentEvent.objects.bulk_create(bulk)
    with CaptureQueriesContext(connection) as asked:
        NewRows(TreatmentEvent).add(added)
    assert len(asked) == 1
    for by_django, here in zip(bulk, added, strict=True):
        assert (here._state.adding, here._state.db) == (by_django._state.adding, by_django._state.db)
        wanted, stored = (TreatmentEvent.objects.get(pk=each.pk) for each in (by_django, here))
        apart = {"position": here.position, "device_seq": here.device_seq}
        assert model_to_dict(wanted) | apart == model_to_dict(stored)
        assert stored.server_time == here.server_time


def _after(row: TreatmentEvent, seq: int) -> TreatmentEvent:
    """The same once more, later."""
    same = {field.attname: getattr(row, field.attname) for field in row._meta.concrete_fields}
    return TreatmentEvent(
        **same | {"id": uuid7(), "server_time": None, "position": row.position + seq, "device_seq": seq}
    )


def test_a_record_is_not_put_over(db: None) -> None:
    with pytest.raises(RecordFixed):
        WholeRows(TreatmentEvent)
