"""Each caution of the catalogue where it is due, and not where it is not."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning import tables
from planning.plan import plan
from planning.plan_input import CanalChoice, Choices, Finding, Irrigant, Junction, Needle, Pattern, PlanInput, RootInput
from planning.plan_value import Severity
from planning.readings import ApexLocator, ConfirmingImage
from planning.techniques import Setting
from tests.planning.given import CHECK_KIT, OPEN_30, block, canal, confirmed, four_canals, molar


def codes(given: PlanInput) -> set[str]:
    return {caution.code for caution in plan(given).cautions}


def first(**more: Any) -> dict[str, Any]:
    canals = four_canals()
    return {"canals": (replace(canals[0], **more), *canals[1:])}


def sized(size: int, reason: str = "") -> dict[str, Any]:
    return {"choices": Choices(needle=OPEN_30, canals=(CanalChoice(canal="MB1", final_size=size, reason=reason),))}


def set_and_read(read_mm: float) -> dict[str, Any]:
    point = "MB cusp"
    image = ConfirmingImage(set_mm=19.5, tip_short_mm=1.0, reference_point=point)
    locator = ApexLocator(read_mm=read_mm, repeat_mm=read_mm, mark="constriction", reference_point=point)
    return first(readings=(image, locator))


SILENT_KIT = replace(CHECK_KIT, instruments=tuple(replace(i, speed_rpm=None) for i in CHECK_KIT.instruments))
CLINIC = {"setting": Setting.CLINIC, "isolated": True}
SIDE_VENTED = Needle(gauge=30, tip="side_vented")
MIXED = Choices(needle=OPEN_30, irrigant=Irrigant.SODIUM_HYPOCHLORITE, final_rinse=(Irrigant.CHLORHEXIDINE,))
FLUSHED = replace(MIXED, final_rinse=(Irrigant.SALINE, Irrigant.CHLORHEXIDINE))

DUE: list[tuple[str, PlanInput, PlanInput]] = [
    ("isolation-missing", molar(setting=Setting.CLINIC), molar(**CLINIC)),
    ("bench-protection", molar(), block()),
    ("hypochlorite-in-block", block(choices=Choices(needle=OPEN_30, irrigant=Irrigant.SODIUM_HYPOCHLORITE)), block()),
    ("chlorhexidine-after-hypochlorite", molar(choices=MIXED), molar(choices=FLUSHED)),
    ("needle-open-in-clinic", molar(**CLINIC), molar(**CLINIC, choices=Choices(needle=SIDE_VENTED))),
    ("length-missing", molar(**first(readings=())), molar()),
    ("length-estimated", molar(**first(readings=confirmed(20.5, 19.5, 1.0, "MB cusp")[:1])), molar()),
    ("length-to-settle", molar(**set_and_read(18.5)), molar(**set_and_read(19.0))),
    ("length-unsettled", molar(**set_and_read(18.0)), molar(**set_and_read(18.5))),
    (
        "length-outside-range",
        molar(**first(readings=confirmed(16.5, 15.5, 1.0, "MB cusp"))),
        molar(**first(readings=confirmed(17.0, 16.0, 1.0, "MB cusp"))),
    ),
    ("length-again-due", molar(**first(curvature_deg=25)), molar(**first(curvature_deg=24.9))),
    ("junction-missing", molar(canals=four_canals(junction=None)), molar()),
    (
        "junction-estimated",
        molar(canals=four_canals(junction=Junction(from_terminus_mm=3.0, method="image_estimate"))),
        molar(),
    ),
    (
        "junction-moved",
        molar(canals=four_canals(junction=Junction(from_terminus_mm=3.0, method="cone_mark", at_length_mm=19.5))),
        molar(canals=four_canals(junction=Junction(from_terminus_mm=3.0, method="cone_mark", at_length_mm=19.0))),
    ),
    ("join-not-tested", molar(roots=()), molar(roots=(RootInput(name="MB", pattern=Pattern.SEPARATE),))),
    ("canal-not-seen", molar(**first(finding=Finding.EXPECTED)), molar()),
    ("canal-not-found", molar(**first(finding=Finding.SEARCHED_NOT_FOUND)), molar()),
    ("usual-canal-missing", molar(canals=four_canals()[2:], roots=()), molar()),
    ("further-canal", molar(tooth="36", roots=()), block()),
    ("curve-severe", molar(**first(curvature_deg=31)), molar(**first(curvature_deg=30))),
    ("curve-supervisor", molar(**first(curvature_deg=36)), molar(**first(curvature_deg=35))),
    ("apex-wide", molar(**first(apex_mm=1.2)), molar(**first(apex_mm=0.9))),
    ("final-size-below", molar(**sized(25)), molar(**sized(30))),
    ("final-size-above", molar(**sized(45)), molar(**sized(40))),
    ("motor-not-stated", molar(kit=SILENT_KIT), molar()),
]


@pytest.mark.parametrize(("code", "due", "not_due"), DUE, ids=[case[0] for case in DUE])
def test_a_caution_is_given_where_it_is_due(code: str, due: PlanInput, not_due: PlanInput) -> None:
    assert code in codes(due)
    assert code not in codes(not_due)


def test_every_caution_of_the_catalogue_is_tested() -> None:
    assert {row["code"] for row in tables.rows("cautions")} == {case[0] for case in DUE}


def test_a_reason_travels_with_a_size_outside_the_range() -> None:
    found = plan(molar(**sized(45, reason="wide canal on the image"))).cautions
    assert "wide canal on the image" in next(c.do for c in found if c.code == "final-size-above")


def test_stops_come_first() -> None:
    found = plan(molar(canals=four_canals(junction=None))).cautions
    severities = [c.severity for c in found]
    assert severities == sorted(severities, key=[Severity.STOP, Severity.CAUTION, Severity.NOTE].index)


def test_a_threshold_of_the_programme_moves_a_caution_and_is_named() -> None:
    planned = plan(molar(**first(curvature_deg=22), thresholds={"curvature.again_deg": 20.0}))
    assert "length-again-due" in {c.code for c in planned.cautions}
    row = next(r for r in planned.rows_used if r.key == "curvature.again_deg")
    assert (row.value, row.programme, row.know) == (20.0, True, "programme rule")


def test_an_instrument_of_a_severe_curve_is_not_passed_on() -> None:
    planned = plan(molar(**first(curvature_deg=32)))
    assert all(step.canals == ("MB1",) for step in planned.tray.steps if "MB1" in step.canals)


def test_a_caution_names_its_value_and_limit() -> None:
    found = plan(molar(**first(curvature_deg=32))).cautions
    severe = next(c for c in found if c.code == "curve-severe")
    assert (severe.value, severe.limit, severe.unit, severe.row) == (32, 30.0, "deg", "curvature.severe_deg")


def test_a_canal_without_a_main_partner_is_not_called_joining() -> None:
    alone = canal("P", "P", *confirmed(22.0, 21.0, 1.5, "P cusp"), point="P cusp")
    assert plan(molar(canals=(alone,), roots=())).canals[0].joins is None
