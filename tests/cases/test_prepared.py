"""Queries that are put into SQL once give what Django gives for the same query put anew, which is the judge."""

from __future__ import annotations

from uuid import UUID

from django.db import connection
from django.db.models import Prefetch, QuerySet
from django.forms import model_to_dict
from django.test.utils import CaptureQueriesContext

from cases.domain.struck import StruckWhy
from cases.domain.uuid7 import uuid7
from cases.mapping.chart_rows import chart
from cases.models import Canal, Case, LengthReading, Person, ToothPlanVersion, TreatmentEvent
from cases.models.prepared import Prepared
from cases.services.corrections import struck
from tests.cases.test_treatment import PHONE, TABLET, event, record
from tests.cast import canal_of


def test_whole_rows_come_back_as_django_gives_them(priya: Person, approved: ToothPlanVersion) -> None:
    ids = [row.pk for row in record(priya, approved, *(event(approved, seq) for seq in (1, 2, 3)))]
    known = Prepared(lambda *of: TreatmentEvent.objects.filter(pk__in=of).order_by("position"))
    for asked in (ids, ids[::-1], ids[:2], [ids[0], ids[0]], [uuid7()]):
        rows, wanted = known(*asked), list(TreatmentEvent.objects.filter(pk__in=asked).order_by("position"))
        assert [_all_of(row) for row in rows] == [_all_of(row) for row in wanted]
    assert known() == []


def test_rows_come_with_the_others_that_belong_to_them(priya: Person, molar: Case) -> None:
    """Also where there is none, and where one is asked for past another."""
    reading = canal_of(molar, "P").readings.latest("number")
    struck.strike(actor=priya, reading=reading, why=StruckWhy.MISTYPED)

    def query(case: UUID) -> QuerySet[LengthReading]:
        of_case = LengthReading.objects.filter(canal__tooth=case).order_by("canal", "number")
        return of_case.select_related("canal__root__main_canal", "struck_by")

    rows, wanted = Prepared(query)(molar.pk), list(query(molar.pk))
    with CaptureQueriesContext(connection) as asked:
        others = [
            [(row.struck_by, row.canal.root.name, row.canal.root.main_canal) for row in of] for of in (rows, wanted)
        ]
    assert (others[0], len(asked)) == (others[1], 0)
    assert [model_to_dict(row) | {"pk": row.pk, "at": row.at} for row in rows] == [
        model_to_dict(row) | {"pk": row.pk, "at": row.at} for row in wanted
    ]
    assert {row.struck_by for row in rows} == {None, priya}
    assert None in {row.canal.root.main_canal for row in rows}


def test_what_is_handed_out_is_what_django_fetches_beforehand(molar: Case) -> None:
    at_hand = chart(molar.pk)
    fetched = Case.objects.prefetch_related(
        "overrides",
        "tooth__roots",
        Prefetch("tooth__canals", queryset=Canal.objects.order_by("place")),
        Prefetch("tooth__canals__readings", queryset=LengthReading.objects.order_by("number")),
        "tooth__canals__junctions",
    ).get(pk=molar.pk)
    with CaptureQueriesContext(connection) as asked:
        rows, wanted = [
            [
                list(case.overrides.all()),
                sorted(case.tooth.roots.all(), key=str),
                [(each, each.tooth, list(each.readings.all()), list(each.junctions.all())) for each in canals],
            ]
            for case, canals in ((case, case.tooth.canals.all()) for case in (at_hand, fetched))
        ]
    assert (rows, len(asked)) == (wanted, 0)
    first = at_hand.tooth.canals.all()[0]
    assert first.readings.all()[0].canal is first
    assert list(first.readings.filter(number=2)) == [each for each in first.readings.all() if each.number == 2] != []
    assert list(at_hand.tooth.canals.filter(name="P")) == [canal_of(molar, "P")]


def _all_of(row: TreatmentEvent) -> list[object]:
    return [row.pk, row.server_time, model_to_dict(row), row._state.adding, row._state.db]


def test_each_id_goes_where_it_was_put(priya: Person, approved: ToothPlanVersion) -> None:
    """Twice in one query, in the order of the query's own, and with a value that is always the same."""
    record(priya, approved, event(approved, 1), event(approved, 2))
    record(priya, approved, event(approved, 1), device=TABLET)

    last = Prepared(
        lambda device, case: (
            TreatmentEvent.objects.filter(case=case, version__case=case, kind="step", device=device)
            .order_by("-position")
            .values_list("device_seq", "pk")
        )
    )
    for device, seq in ((PHONE, 2), (TABLET, 1)):
        row = last.first(device, approved.case_id)
        assert row is not None
        assert row == (seq, TreatmentEvent.objects.get(device=device, device_seq=seq).pk)
        assert isinstance(row[1], UUID)
    assert last.first(uuid7(), approved.case_id) is None


def test_a_batch_asks_as_much_of_the_database_whatever_came_before(priya: Person, approved: ToothPlanVersion) -> None:
    """Begin, lock, part, versions, last, known, insert, told, fold read and kept, line read and kept, end."""

    def asked_for(first: int, count: int) -> int:
        with CaptureQueriesContext(connection) as asked:
            record(priya, approved, *(event(approved, seq) for seq in range(first, first + count)))
        return len(asked)

    record(priya, approved, event(approved, 1))
    few = asked_for(2, 1)
    record(priya, approved, *(event(approved, seq) for seq in range(3, 103)))
    assert (few, asked_for(103, 10)) == (13, 13)
