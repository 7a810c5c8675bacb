"""A preview asked for again is answered from what was remembered, and whatever a plan rests on is seen when it changes.

The judges: a plan computed anew, written by the framework's own renderer; and the count of what was computed.
"""

from __future__ import annotations

import gzip
from collections.abc import Callable, Iterator
from functools import partial
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from rest_framework.renderers import JSONRenderer

from cases.domain.events.payloads import StepPayload
from cases.domain.struck import StruckWhy
from cases.models import (
    Case,
    CautionOverride,
    Kit,
    KitFilling,
    KitInstrument,
    KitNeedle,
    Person,
    Programme,
    ToothPlanVersion,
)
from cases.services.charting import canals, cases, readings
from cases.services.corrections import struck
from cases.services.people import thresholds
from cases.services.planning import overrides, plans, remembered
from planning.contract.canal_facts import WallInput, WidthInput
from planning.contract.plan_input import Junction, Pattern, PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.encoding import canonical_text, encode
from planning.lengths.readings import ConfirmingImage
from planning.run_sheet.graph import Exit
from planning.whole_tooth.plan import plan
from tests.cases.test_treatment import event, record
from tests.cast import API, canal_of, chart, client, open_case


@pytest.fixture
def computed(monkeypatch: pytest.MonkeyPatch) -> Iterator[list[PlanInput]]:
    """What was computed, with nothing remembered from before."""
    inputs: list[PlanInput] = []

    def counted(plan_input: PlanInput) -> Plan:
        inputs.append(plan_input)
        return plan(plan_input)

    # Two samples: what is looked at here is whether it is computed.
    monkeypatch.setattr(plans, "SAMPLES", 2)
    monkeypatch.setattr(remembered, "plan", counted)
    remembered.kept.clear()
    yield inputs
    remembered.kept.clear()


class Previews:
    """Asks for the same preview again and again, as one phone does."""

    def __init__(self, person: Person, case: Case, kit: Kit) -> None:
        self.at, self.phone = f"{API}/cases/{case.pk}/preview", client(person)
        choices = {"needle": {"gauge": 30, "tip": "open"}}
        self.asked: dict[str, Any] = {"kit_id": str(kit.pk), "technique": "crown-down", "choices": choices}

    def answer(self, **headers: str) -> Any:
        answer = self.phone.post(self.at, self.asked, format="json", headers=headers)
        assert answer.status_code == 200, answer.content
        return answer


def rendered(plan_input: PlanInput) -> bytes:
    """The plan of the input, computed and written anew."""
    written: bytes = JSONRenderer().render(encode(plan(plan_input)))
    return written


def test_it_is_byte_by_byte_what_a_plan_computed_anew_is_written_as(
    priya: Person, molar: Case, kit: Kit, computed: list[PlanInput]
) -> None:
    previews = Previews(priya, molar, kit)
    first, again = previews.answer(), previews.answer()
    packed = previews.answer(**{"Accept-Encoding": "gzip"})
    assert len(computed) == 1
    assert first.content == again.content == gzip.decompress(packed.content) == rendered(computed[0])
    assert (packed["Content-Encoding"], packed["Content-Type"]) == ("gzip", "application/json")
    assert "Accept-Encoding" in packed["Vary"]
    assert not again.has_header("Content-Encoding")


def test_it_asks_as_much_of_the_database_however_many_canals_there_are(priya: Person, molar: Case, kit: Kit) -> None:
    """Who asks (two), the case, the role; what was done; and what a plan is made from (17)."""
    previews, counts = Previews(priya, molar, kit), []
    previews.answer()
    for name in ("DB2", "P2"):
        with CaptureQueriesContext(connection) as asked:
            previews.answer()
        counts.append(len(asked))
        canals.add_canal(actor=priya, case=molar, name=name, root=name[:-1], facts={})
        previews.answer()
    assert counts == [22, 22]


class Changes:
    """What a plan of the molar rests on, changed one thing after the other; it never is as it was before."""

    def __init__(self, student: Person, supervisor: Person, coordinator: Person, version: ToothPlanVersion) -> None:
        self.student, self.supervisor, self.coordinator, self.version = student, supervisor, coordinator, version
        self.case, self.kit = version.case, version.kit

    def steps(self) -> Iterator[Callable[[], object]]:
        yield partial(self.charts, curvature_deg=24)
        yield partial(self.charts, wall=WallInput(thickness_mm=0.9, from_end_mm=8.0))
        yield partial(self.charts, reference_point="the rim")
        yield from (self.reads, self.joins, self.strikes, self.parts)
        yield partial(self.opens, isolated=True)
        yield partial(self.opens, factors=["gagging:high"])
        yield from (self.adds, self.figures, self.removes, self.widens)
        yield partial(KitInstrument.objects.filter(kit=self.kit, size=10, taper=2).update, uses=3)
        yield partial(KitNeedle.objects.create, kit=self.kit, gauge=27, tip="open")
        yield partial(KitFilling.objects.create, kit=self.kit, kind="cone", size=60, taper=2)
        yield partial(Kit.objects.filter(pk=self.kit.pk).update, name="another name")
        yield from (self.overrides, self.feels, self.withdraws)

    def charts(self, **changes: Any) -> None:
        canals.change_canal(actor=self.student, canal=canal_of(self.case, "P"), changes=changes)

    def reads(self) -> None:
        canal = canal_of(self.case, "DB")
        image = ConfirmingImage(reference_point=canal.reference_point, set_mm=18.5, tip_short_mm=0.5)
        readings.take_length(actor=self.student, canal=canal, reading=image)

    def strikes(self) -> None:
        reading = canal_of(self.case, "DB").readings.latest("number")
        struck.strike(actor=self.student, reading=reading, why=StruckWhy.WRONG_CANAL)

    def joins(self) -> None:
        junction = Junction(from_terminus_mm=2.5, method="cone_mark")
        readings.record_junction(actor=self.student, canal=canal_of(self.case, "MB2"), junction=junction)

    def parts(self) -> None:
        canals.set_root(actor=self.student, case=self.case, name="MB", pattern=Pattern.UNKNOWN, main_canal=None)

    def opens(self, **changes: Any) -> None:
        case = Case.objects.get(pk=self.case.pk)
        cases.change_case(actor=self.student, case=case, seen_revision=case.revision, changes=changes)

    def adds(self) -> None:
        canals.add_canal(actor=self.student, case=self.case, name="DB2", root="DB", facts={})

    def removes(self) -> None:
        canals.remove_canal(actor=self.student, canal=canal_of(self.case, "DB2"))

    def figures(self) -> None:
        programme = self.case.programme_id
        thresholds.set_threshold(actor=self.coordinator, programme_id=programme, key="set_back.none", value=0.5)

    def widens(self) -> None:
        widths = (WidthInput(from_end_mm=1.0, narrow_mm=0.3), WidthInput(from_end_mm=5.0, narrow_mm=0.5))
        programme = self.case.programme_id
        thresholds.set_widths(actor=self.coordinator, programme_id=programme, tooth="26", canal="P", widths=widths)

    def overrides(self) -> None:
        said = {"code": "apex-wide", "reason": "Seen.", "supervisor": self.supervisor}
        canal = canal_of(self.case, "P")
        CautionOverride.objects.create(sent_hash="", case=self.case, version=self.version, canal=canal, **said)

    def withdraws(self) -> None:
        overrides.withdraw(actor=self.supervisor, override=CautionOverride.objects.get(case=self.case))

    def feels(self) -> None:
        felt = StepPayload(exit=Exit.REACHED, depth_um=21_500, stop_um=21_500)
        record(self.student, self.version, event(self.version, 1, felt, node="explore/10-02"))


@pytest.mark.one_database
def test_whatever_changes_is_seen_and_what_did_not_is_computed_once(
    priya: Person, vale: Person, rosa: Person, approved: ToothPlanVersion, computed: list[PlanInput]
) -> None:
    previews, changes = Previews(priya, approved.case, approved.kit), Changes(priya, vale, rosa, approved)
    before = previews.answer().content
    for number, step in enumerate(changes.steps(), start=2):
        step()
        answer = previews.answer().content
        assert len(computed) == number, step
        assert answer == rendered(computed[-1]) == previews.answer().content, step
    assert len({canonical_text(plan_input) for plan_input in computed}) == len(computed) == number
    assert before == rendered(computed[0])


def test_what_an_instrument_did_in_another_tooth_is_seen(
    priya: Person, programme: Programme, approved: ToothPlanVersion, computed: list[PlanInput]
) -> None:
    other = open_case(programme, priya, patient_alias="Bench 2")
    chart(other, priya)
    previews = Previews(priya, other, approved.kit)
    previews.answer()
    record(priya, approved, event(approved, 1, StepPayload(exit=Exit.REACHED, depth_um=21_500), node="explore/10-02"))
    assert previews.answer().content == rendered(computed[-1])
    assert len(computed) == 2
