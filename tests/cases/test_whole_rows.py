"""A row put whole is the row that Django saves, which is the judge."""

from __future__ import annotations

import pytest
from django.db import connection
from django.forms import model_to_dict
from django.test.utils import CaptureQueriesContext
from django.utils import timezone

from cases.models import Person, RunningWork, ToothPlanVersion, TreatmentEvent
from cases.models.base import RecordFixed
from cases.models.whole_rows import WholeRows
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


def test_a_record_is_not_put_over(db: None) -> None:
    with pytest.raises(RecordFixed):
        WholeRows(TreatmentEvent)
