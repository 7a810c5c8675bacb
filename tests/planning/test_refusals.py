"""What the planner refuses: each with its code, a path into the input and a sentence that says what to do."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from planning.contract.canal_facts import WallInput
from planning.contract.plan_input import (
    CanalChoice,
    Choices,
    Irrigant,
    Junction,
    Needle,
    Pattern,
    PlanInput,
    RootInput,
)
from planning.contract.tooth_facts import Anatomy
from planning.foundation.errors import PlanningError
from planning.instruments.iso_3630 import Motion, Use
from planning.lengths.readings import PreOperativeImage, Resorption
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.planning.given import CHECK_KIT, OPEN_30, block, canal, four_canals, hand, kit, molar, rotary, technique


def refusal(plan_input: PlanInput) -> PlanningError:
    with pytest.raises(PlanningError) as refused:
        plan(plan_input)
    return refused.value


def first_canal(**more: Any) -> tuple[Any, ...]:
    canals = four_canals()
    return (replace(canals[0], **more), *canals[1:])


CURVES = [
    ("curve_radius_mm", 0.0, ("curve_radius_mm",)),
    ("curve_radius_mm", -3.0, ("curve_radius_mm",)),
    ("curve_radius_mm", 101.0, ("curve_radius_mm",)),
    ("curve_from_end_mm", -1.0, ("curve_from_end_mm",)),
    ("curve_from_end_mm", 37.0, ("curve_from_end_mm",)),
    ("wall", WallInput(thickness_mm=5.1, from_end_mm=8.0), ("wall", "thickness_mm")),
    ("wall", WallInput(thickness_mm=-0.1, from_end_mm=8.0), ("wall", "thickness_mm")),
    ("wall", WallInput(thickness_mm=0.8, from_end_mm=40.0), ("wall", "from_end_mm")),
]


@pytest.mark.parametrize(("field", "value", "at"), CURVES)
def test_a_curve_or_a_wall_that_cannot_be(field: str, value: Any, at: tuple[str, ...]) -> None:
    error = refusal(molar(canals=first_canal(**{field: value})))
    assert (error.code, error.pointer) == ("out-of-bounds", ("canals", 0, *at))


def test_a_first_binder_must_be_a_size() -> None:
    error = refusal(molar(canals=first_canal(first_binder_size=22)))
    assert (error.code, error.pointer) == ("choice-not-possible", ("canals", 0, "first_binder_size"))


REFUSED: list[tuple[str, dict[str, Any], str, tuple[str | int, ...]]] = [
    ("no such tooth", {"tooth": "99"}, "unknown-tooth", ("tooth",)),
    ("primary tooth", {"tooth": "75"}, "charted-not-planned", ("tooth",)),
    ("retreatment", {"root_filled": True}, "charted-not-planned", ("root_filled",)),
    ("perforation", {"perforation": True}, "charted-not-planned", ("perforation",)),
    ("C-shaped", {"anatomy": Anatomy.FUSED_OR_C_SHAPED}, "charted-not-planned", ("anatomy",)),
    ("third molar", {"tooth": "28"}, "charted-not-planned", ("anatomy",)),
    ("open apex", {"canals": first_canal(apex_mm=1.6)}, "charted-not-planned", ("canals", 0, "apex_mm")),
    (
        "root resorption",
        {"canals": first_canal(resorption=Resorption.BONE_AND_ROOT)},
        "charted-not-planned",
        ("canals", 0, "resorption"),
    ),
    ("no canals", {"canals": (), "roots": ()}, "no-canals", ("canals",)),
    ("a canal twice", {"canals": (*four_canals(), four_canals()[3])}, "canals-do-not-fit", ("canals", 4, "name")),
    (
        "absurd length",
        {"canals": first_canal(readings=(PreOperativeImage(tooth_mm=205, reference_point="MB cusp"),))},
        "length-out-of-bounds",
        ("canals", 0, "readings", 0, "tooth_mm"),
    ),
    (
        "junction beyond the canal",
        {"canals": four_canals(junction=Junction(from_terminus_mm=19.0, method="cone_mark"))},
        "junction-beyond-canal",
        ("canals", 1, "junction", "from_terminus_mm"),
    ),
    (
        "orifice beyond the canal",
        {"canals": first_canal(orifice_mm=19.5)},
        "canals-do-not-fit",
        ("canals", 0, "orifice_mm"),
    ),
    (
        "joining canals without a main one",
        {"roots": (RootInput(name="MB", pattern=Pattern.JOIN),)},
        "choice-not-possible",
        ("roots", 0, "main_canal"),
    ),
    (
        "a main canal of another root",
        {"roots": (RootInput(name="MB", pattern=Pattern.JOIN, main_canal="P"),)},
        "choice-not-possible",
        ("roots", 0, "main_canal"),
    ),
    ("a root without a canal", {"roots": (RootInput(name="X"),)}, "canals-do-not-fit", ("roots", 0, "name")),
    (
        "reciprocating in a crown-down",
        {"kit": kit(*CHECK_KIT.instruments[-8:], rotary(25, 6, motion=Motion.RECIPROCATING))},
        "motion-not-accepted",
        ("kit", "instruments", 20, "motion"),
    ),
    (
        "kit without a needed size",
        {"kit": kit(*CHECK_KIT.instruments[-8:-3])},
        "kit-lacks-instrument",
        ("kit", "instruments"),
    ),
    ("kit without coronal", {"kit": kit(*CHECK_KIT.instruments[-6:])}, "kit-lacks-instrument", ("kit", "instruments")),
    (
        "kit without small hand",
        {"kit": kit(*CHECK_KIT.instruments[-8:], hands=(15, 20))},
        "kit-lacks-instrument",
        ("kit", "instruments"),
    ),
    (
        "instrument too short",
        {
            "kit": replace(
                CHECK_KIT, instruments=(hand(10, 21), *(i for i in CHECK_KIT.instruments if i.name != "10/.02"))
            )
        },
        "instrument-too-short",
        ("kit", "instruments", 0, "length_mm"),
    ),
    (
        "steep taper not described",
        {"kit": kit(rotary(25, 10, Use.CORONAL, largest_flute_mm=None), *CHECK_KIT.instruments[-6:])},
        "instrument-not-described",
        ("kit", "instruments", 12, "largest_flute_mm"),
    ),
    (
        "the same instrument twice",
        {"kit": kit(*CHECK_KIT.instruments[-8:], CHECK_KIT.instruments[-1])},
        "instrument-not-described",
        ("kit", "instruments", 20),
    ),
    (
        "a final size that is no ISO size",
        {"choices": Choices(needle=OPEN_30, canals=(CanalChoice(canal="P", final_size=33),))},
        "choice-not-possible",
        ("choices", "canals", 0, "final_size"),
    ),
    (
        "a final size below the series",
        {"choices": Choices(needle=OPEN_30, canals=(CanalChoice(canal="P", final_size=20),))},
        "choice-not-possible",
        ("choices", "canals"),
    ),
    (
        "a size for a canal that is not there",
        {"choices": Choices(needle=OPEN_30, canals=(CanalChoice(canal="DL"),))},
        "canals-do-not-fit",
        ("choices", "canals", 0, "canal"),
    ),
    (
        "an unknown needle",
        {"choices": Choices(needle=Needle(gauge=12, tip="open"))},
        "choice-not-possible",
        ("choices", "needle", "gauge"),
    ),
    (
        "an unknown threshold",
        {"thresholds": {"set_back.mine": 1.0}},
        "choice-not-possible",
        ("thresholds", "set_back.mine"),
    ),
]


@pytest.mark.parametrize(
    ("fields", "code", "pointer"), [case[1:] for case in REFUSED], ids=[case[0] for case in REFUSED]
)
def test_refused(fields: dict[str, Any], code: str, pointer: tuple[str | int, ...]) -> None:
    refused = refusal(molar(**fields))
    assert (refused.code, refused.pointer) == (code, pointer)
    assert str(refused).endswith(".")


def test_one_too_short_is_named() -> None:
    short = replace(
        CHECK_KIT,
        instruments=tuple(replace(i, length_mm=21) if i.name == "30/.04" else i for i in CHECK_KIT.instruments),
    )
    assert "30/.04 is 21 mm long and reaches 19.0 mm" in str(refusal(molar(kit=short)))


def test_a_supervisor_may_chart_a_third_molar() -> None:
    planned = plan(molar(tooth="28", anatomy=Anatomy.CHARTED_BY_SUPERVISOR))
    assert planned.tooth.iso == "28"


def test_a_hand_technique_leaves_engine_instruments_in_the_drawer() -> None:
    planned = plan(molar(technique=technique("step-back")))
    assert all(item.instrument.motion == "hand" for item in planned.tray_list)


@pytest.mark.parametrize(
    "plan_input",
    [
        molar(setting=Setting.CLINIC),
        block(choices=Choices(needle=OPEN_30, irrigant=Irrigant.SODIUM_HYPOCHLORITE)),
        block(canals=(canal("single", "single", point="top"),)),
    ],
    ids=["clinic without a dam", "hypochlorite in a block", "no length"],
)
def test_nothing_opens(plan_input: PlanInput) -> None:
    for planned in plan(plan_input).canals:
        assert [node.kind for node in planned.run_sheet.nodes.values()] == ["end"]
        assert planned.withheld
