"""Opening a case, charting it, measuring it."""

from __future__ import annotations

import pytest

from cases.domain.errors import (
    CanalInUse,
    ChangedSince,
    NotAllowed,
    NotHere,
    NotUsable,
    SentDifferently,
    SettingFixed,
    TakenAlready,
)
from cases.domain.uuid7 import uuid7
from cases.mapping.charts import facts_of, reading_of, tooth_facts_of
from cases.models import Canal, Case, ChangeLog, DemoPatient, LengthReading, Person, Programme
from cases.queries import charts
from cases.services.charting import canals, cases, readings
from planning.anatomy import Notation, NotationMissing, ToothName
from planning.contract.canal_facts import Finding
from planning.contract.plan_input import Junction, Pattern
from planning.contract.tooth_facts import Anatomy, ToothFacts
from planning.foundation.errors import LengthOutOfBounds, ReadingNotUsable, UnknownTooth
from planning.lengths.readings import ApexLocator, ConfirmingImage, DirectSight, LengthState, PreOperativeImage
from tests.cast import canal_of, open_case


def test_a_molar_opens_with_its_four_canals(opened: Case) -> None:
    molar_canals = [(c.name, c.root.name, c.reference_point) for c in opened.tooth.canals.order_by("place")]
    assert molar_canals == [
        ("MB1", "MB", "MB cusp"),
        ("MB2", "MB", "MB cusp"),
        ("DB", "DB", "DB cusp"),
        ("P", "P", "palatal cusp"),
    ]


@pytest.mark.parametrize(
    ("notation", "designation"),
    [(Notation.ISO_3950, "26"), (Notation.UNIVERSAL, "14"), (Notation.PALMER, "UL6"), (Notation.PALMER, "⎿6")],
)
def test_one_tooth_in_every_notation(programme: Programme, priya: Person, notation: Notation, designation: str) -> None:
    case = open_case(programme, priya, tooth=ToothName(notation=notation, designation=designation))
    assert (case.tooth.iso, case.tooth.notation, case.tooth.designation) == ("26", notation, designation)


def test_no_tooth_and_no_notation_are_refused_and_leave_nothing(programme: Programme, priya: Person) -> None:
    with pytest.raises(UnknownTooth):
        open_case(programme, priya, "99")
    with pytest.raises(NotationMissing, match="14"):
        open_case(programme, priya, tooth=ToothName(designation="14"))
    assert not Case.objects.exists()
    assert not DemoPatient.objects.exists()


def test_a_canal_can_be_asked_for_from_the_start(programme: Programme, priya: Person) -> None:
    case = open_case(programme, priya, "46", canals=["MB", "ML", "D", "DL"])
    assert case.tooth.canals.count() == 4
    with pytest.raises(NotUsable, match="not on offer"):
        open_case(programme, priya, "46", canals=["MB", "Q7"])


def test_an_opening_sent_twice_opens_one_case(programme: Programme, priya: Person, tom: Person) -> None:
    id_ = uuid7()
    assert open_case(programme, priya, id=id_) == open_case(programme, priya, id=id_)
    with pytest.raises(SentDifferently):
        open_case(programme, priya, "27", id=id_)
    with pytest.raises(SentDifferently):
        open_case(programme, tom, id=id_)


def test_only_students_of_the_programme_open_cases(programme: Programme, vale: Person, stranger: Person) -> None:
    with pytest.raises(NotAllowed):
        open_case(programme, vale)
    with pytest.raises(NotHere):
        open_case(programme, stranger)


def test_a_supervisor_is_named_from_the_programme(
    programme: Programme, priya: Person, vale: Person, tom: Person
) -> None:
    assert open_case(programme, priya, supervisor_id=vale.pk).supervisor == vale
    with pytest.raises(NotUsable, match="does not supervise"):
        open_case(programme, priya, supervisor_id=tom.pk)


def test_every_change_a_plan_rests_on_raises_the_revision(opened: Case, priya: Person, vale: Person) -> None:
    case = cases.change_case(actor=priya, case=opened, seen_revision=1, changes={"isolated": True})
    assert case.revision == 2
    case = cases.change_case(actor=priya, case=case, seen_revision=2, changes={"isolated": True})
    assert case.revision == 2
    case = cases.change_case(actor=priya, case=case, seen_revision=2, changes={"supervisor_id": vale.pk})
    assert (case.revision, case.supervisor) == (2, vale)
    with pytest.raises(ChangedSince):
        cases.change_case(actor=vale, case=case, seen_revision=1, changes={"isolated": False})


def test_the_setting_stays_once_a_length_is_taken(molar: Case, priya: Person) -> None:
    with pytest.raises(SettingFixed):
        cases.change_case(actor=priya, case=molar, seen_revision=molar.revision, changes={"setting": "clinic"})


def test_unusual_anatomy_is_for_supervisors_to_record(opened: Case, priya: Person, vale: Person) -> None:
    changes = {"anatomy": Anatomy.CHARTED_BY_SUPERVISOR}
    with pytest.raises(NotAllowed, match="supervisor"):
        cases.change_case(actor=priya, case=opened, seen_revision=1, changes=changes)
    changed = cases.change_case(actor=vale, case=opened, seen_revision=1, changes=changes)
    assert tooth_facts_of(changed) == ToothFacts(anatomy=Anatomy.CHARTED_BY_SUPERVISOR)


def test_searched_and_not_found_is_for_supervisors_to_record(opened: Case, priya: Person, vale: Person) -> None:
    canal, changes = canal_of(opened, "MB2"), {"finding": Finding.SEARCHED_NOT_FOUND}
    with pytest.raises(NotAllowed, match="supervisor"):
        canals.change_canal(actor=priya, canal=canal, changes=changes)
    changed = canals.change_canal(actor=vale, canal=canal, changes=changes)
    assert facts_of(changed).finding is Finding.SEARCHED_NOT_FOUND


def test_another_student_changes_nothing(opened: Case, tom: Person) -> None:
    with pytest.raises(NotAllowed, match="own student"):
        cases.change_case(actor=tom, case=opened, seen_revision=1, changes={"isolated": True})
    with pytest.raises(NotAllowed):
        canals.change_canal(actor=tom, canal=canal_of(opened, "P"), changes={"finding": Finding.FOUND})


def test_a_canal_that_was_missed_is_added(opened: Case, priya: Person) -> None:
    facts = {"reference_point": "MB cusp", "finding": Finding.FOUND}
    canal, _ = canals.add_canal(actor=priya, case=opened, name="MB3", root="MB", facts=facts)
    assert (canal.place, canal.root.canals.count()) == (4, 3)
    with pytest.raises(TakenAlready):
        canals.add_canal(actor=priya, case=opened, name="MB3", root="MB", facts=facts)
    with pytest.raises(TakenAlready):
        canals.change_canal(actor=priya, canal=canal, changes={"name": "P"})


def test_a_curve_does_not_begin_above_the_orifice(opened: Case, priya: Person) -> None:
    with pytest.raises(NotUsable, match="above the orifice"):
        canals.change_canal(
            actor=priya, canal=canal_of(opened, "P"), changes={"orifice_mm": 9.0, "curve_start_mm": 8.0}
        )


def test_a_canal_goes_only_while_nothing_was_measured(molar: Case, opened: Case, priya: Person) -> None:
    with pytest.raises(CanalInUse):
        canals.remove_canal(actor=priya, canal=canal_of(molar, "P"))
    canal, _ = canals.add_canal(actor=priya, case=molar, name="X", root="X", facts={"reference_point": "P cusp"})
    canals.remove_canal(actor=priya, canal=canal_of(molar, "X"))
    assert not Canal.objects.filter(pk=canal.pk).exists()
    assert not molar.tooth.roots.filter(name="X").exists()


def test_the_main_canal_is_one_of_the_root(opened: Case, priya: Person) -> None:
    with pytest.raises(NotUsable, match="no canal DB"):
        canals.set_root(actor=priya, case=opened, name="MB", pattern=Pattern.JOIN, main_canal="DB")
    root = canals.set_root(actor=priya, case=opened, name="MB", pattern=Pattern.JOIN, main_canal="MB1")
    assert root.main_canal == canal_of(opened, "MB1")


# --- measuring ---


def take(person: Person, case: Case, canal: str, reading: object, **more: object) -> LengthReading:
    row, _ = readings.take_length(
        actor=person,
        canal=canal_of(case, canal),
        reading=reading,  # type: ignore[arg-type]
        **more,  # type: ignore[arg-type]
    )
    return row


def image(tooth_mm: float, point: str = "DB cusp") -> PreOperativeImage:
    return PreOperativeImage(tooth_mm=tooth_mm, reference_point=point)


def test_a_later_reading_is_added_and_the_earlier_stays(opened: Case, priya: Person) -> None:
    take(priya, opened, "DB", image(19.5))
    take(priya, opened, "DB", image(20.0))
    canal = canal_of(opened, "DB")
    assert [reading_of(row) for row in canal.readings.order_by("number")] == [image(19.5), image(20.0)]


def test_lengths_come_to_what_the_planner_says(molar: Case) -> None:
    lengths = {canal.row.name: canal.length for canal in charts.shown(molar.pk).canals}
    stops = {name: length and (length.state, length.stop_mm) for name, length in lengths.items()}
    settled = LengthState.SETTLED
    assert stops == {"MB1": (settled, 19.5), "MB2": (settled, 19.0), "DB": (settled, 18.0), "P": (settled, 21.5)}


def test_readings_that_disagree_leave_the_length_unsettled(molar: Case, priya: Person) -> None:
    locator = ApexLocator(read_mm=16.0, repeat_mm=16.0, mark="constriction", reference_point="DB cusp")
    take(priya, molar, "DB", locator)
    canal_ = next(canal for canal in charts.shown(molar.pk).canals if canal.row.name == "DB")
    assert canal_.length is not None
    assert canal_.length.state is LengthState.UNSETTLED
    assert "2.0 mm apart" in canal_.length.what_to_do


def test_a_length_that_cannot_be_right_is_refused_with_its_place(opened: Case, priya: Person) -> None:
    with pytest.raises(LengthOutOfBounds) as refusal:
        take(priya, opened, "DB", image(36.5))
    assert refusal.value.pointer == ("reading", "tooth_mm")
    assert not LengthReading.objects.exists()


def test_the_end_of_a_canal_is_not_seen_in_a_patient(programme: Programme, priya: Person) -> None:
    case = open_case(programme, priya, "11", setting="clinic")
    seen = DirectSight(seen_mm=21.0, reference_point="incisal edge")
    with pytest.raises(ReadingNotUsable):
        take(priya, case, "single", seen)


def test_without_a_reference_point_nothing_is_measured(programme: Programme, priya: Person) -> None:
    case = open_case(programme, priya, "46")
    with pytest.raises(NotUsable, match="reference point"):
        take(priya, case, "D", image(21.0))


def test_a_reading_sent_twice_is_one_reading(opened: Case, priya: Person) -> None:
    id_ = uuid7()
    first = take(priya, opened, "DB", image(19.5), id=id_)
    revision = Case.objects.get(pk=opened.pk).revision
    assert take(priya, opened, "DB", image(19.5), id=id_) == first
    assert Case.objects.get(pk=opened.pk).revision == revision
    with pytest.raises(SentDifferently):
        take(priya, opened, "DB", image(19.0), id=id_)
    with pytest.raises(SentDifferently):
        take(priya, opened, "P", image(19.5), id=id_)


def test_a_corrected_length_does_not_move_the_junction(molar: Case, priya: Person) -> None:
    longer = ConfirmingImage(set_mm=19.5, tip_short_mm=1.0, reference_point="MB cusp")
    take(priya, molar, "MB2", longer)
    canal_ = next(canal for canal in charts.shown(molar.pk).canals if canal.row.name == "MB2")
    assert canal_.junction is not None
    assert (canal_.junction.from_terminus_mm, canal_.junction.at_length_mm) == (3.0, 19.0)
    assert canal_.length is not None
    assert canal_.length.stop_mm == 19.5


@pytest.mark.parametrize("from_terminus_mm", [0.0, -1.0, 19.0, 25.0])
def test_a_junction_lies_within_its_canal(molar: Case, priya: Person, from_terminus_mm: float) -> None:
    junction = Junction(from_terminus_mm=from_terminus_mm, method="cone_mark")
    with pytest.raises(NotUsable, match="more than 0 mm"):
        readings.record_junction(actor=priya, canal=canal_of(molar, "MB2"), junction=junction)


def test_what_was_charted_is_in_the_log(opened: Case, priya: Person) -> None:
    canals.change_canal(actor=priya, canal=canal_of(opened, "P"), changes={"curvature_deg": 12.0})
    line = ChangeLog.objects.filter(case=opened, subject="Canal").get()
    assert (line.actor, line.verb, line.before, line.after) == (
        priya,
        "change",
        '{"curvature_deg":null}',
        '{"curvature_deg":12.0}',
    )


def test_a_fact_of_the_tooth_that_is_not_sent_stays(opened: Case, priya: Person) -> None:
    changes: dict[str, object] = {"setting": "clinic", "isolated": True, "factors": ("opening:moderate",)}
    case = cases.change_case(actor=priya, case=opened, seen_revision=1, changes=changes)
    case = cases.change_case(actor=priya, case=case, seen_revision=2, changes={"perforation": True})
    stored = Case.objects.get(pk=case.pk)
    facts = ToothFacts(isolated=True, perforation=True, factors=("opening:moderate",))
    assert (stored.setting, stored.revision, tooth_facts_of(stored)) == ("clinic", 3, facts)
    last = ChangeLog.objects.filter(case=opened, verb="change").latest("id")
    assert (last.before, last.after) == ('{"perforation":false}', '{"perforation":true}')


def test_the_log_names_nobody(opened: Case, priya: Person, vale: Person) -> None:
    cases.change_case(actor=priya, case=opened, seen_revision=1, changes={"supervisor_id": vale.pk})
    line = ChangeLog.objects.filter(case=opened, verb="change").get()
    assert line.after == f'{{"supervisor_id":"{vale.pk}"}}'
    logged = "".join(f"{line.before}{line.after}" for line in ChangeLog.objects.all())
    assert not any(person.display_name in logged for person in (priya, vale))
