"""Inputs for the planner's tests: check kits and the four-canal molar. All sizes here are check values."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from planning.contract.obturation import FillingItem
from planning.contract.plan_input import CanalInput, Choices, Junction, Kit, Needle, Pattern, PlanInput, RootInput
from planning.instruments.iso_3630 import Instrument, Motion, Use
from planning.lengths.readings import ConfirmingImage, DirectSight, PreOperativeImage, Reading
from planning.techniques.files import provided_techniques
from planning.techniques.technique import Setting, Technique

OPEN_30 = Needle(gauge=30, tip="open")
HAND_SIZES = (8, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60)


def hand(size: int, length_mm: float = 25) -> Instrument:
    return Instrument(size=size, taper=2, motion=Motion.HAND, use=Use.HAND, length_mm=length_mm, cutting_part_mm=16)


def rotary(size: int, taper: int, use: Use = Use.SHAPING, **more: Any) -> Instrument:
    fields: dict[str, Any] = {
        "size": size,
        "taper": taper,
        "motion": Motion.CONTINUOUS,
        "use": use,
        "length_mm": 25,
        "cutting_part_mm": 16,
        "speed_rpm": 300,
        "torque_ncm": 2.0,
    }
    if taper >= 8:
        fields["largest_flute_mm"] = 1.1
    return Instrument(**(fields | more))


def kit(
    *rotaries: Instrument,
    hands: Sequence[int] = HAND_SIZES,
    filling: Sequence[FillingItem] = (),
    name: str = "check kit",
) -> Kit:
    return Kit(name=name, instruments=(*map(hand, hands), *rotaries), needles=(OPEN_30,), filling=tuple(filling))


def cone(size: int, taper: int) -> FillingItem:
    return FillingItem(kind="cone", size=size, taper=taper)


def plugger(size: int, taper: int = 2) -> FillingItem:
    return FillingItem(kind="plugger", size=size, taper=taper)


def spreader(size: int, taper: int = 2) -> FillingItem:
    return FillingItem(kind="spreader", size=size, taper=taper)


CHECK_KIT = kit(
    rotary(25, 10, Use.CORONAL),
    rotary(25, 8, Use.CORONAL),
    *(rotary(size, 4) for size in (25, 30, 35, 40, 45, 50)),
    filling=(
        *(cone(size, 4) for size in (25, 30, 35, 40, 45, 50)),
        *(cone(size, 2) for size in (25, 30, 35, 40, 45, 50)),
        *map(plugger, (40, 45, 50, 60)),
        spreader(25),
    ),
)
"""Common practice, no source: coronal 25/.10 and 25/.08, then a series of taper .04."""

SECOND_KIT = kit(
    rotary(35, 12, Use.CORONAL),
    rotary(30, 9, Use.CORONAL),
    *(rotary(size, 6) for size in (20, 25, 30, 35, 40)),
)
"""Other sizes and tapers throughout, so that nothing in the program depends on the first kit's."""


def canal(name: str, root: str, *readings: Reading, point: str = "MB cusp", **more: Any) -> CanalInput:
    return CanalInput(name=name, root=root, reference_point=point, readings=readings, **more)


def confirmed(pre_mm: float, set_mm: float, tip_short_mm: float, point: str) -> tuple[Reading, ...]:
    return (
        PreOperativeImage(tooth_mm=pre_mm, reference_point=point),
        ConfirmingImage(set_mm=set_mm, tip_short_mm=tip_short_mm, reference_point=point),
    )


FOUND_JUNCTION = Junction(from_terminus_mm=3.0, method="cone_mark")


def four_canals(*, junction: Junction | None = FOUND_JUNCTION) -> tuple[CanalInput, ...]:
    """Lengths of the check case: an extracted upper left first molar."""
    return (
        canal("MB1", "MB", *confirmed(20.5, 19.5, 1.0, "MB cusp")),
        canal("MB2", "MB", *confirmed(20.0, 19.0, 1.0, "MB cusp"), junction=junction),
        canal("DB", "DB", *confirmed(19.5, 18.5, 0.5, "DB cusp"), point="DB cusp"),
        canal("P", "P", *confirmed(22.0, 21.0, 1.5, "P cusp"), point="P cusp"),
    )


def molar(**more: Any) -> PlanInput:
    fields: dict[str, Any] = {
        "tooth": "26",
        "setting": Setting.EXTRACTED,
        "canals": four_canals(),
        "roots": (RootInput(name="MB", pattern=Pattern.JOIN, main_canal="MB1"),),
        "kit": CHECK_KIT,
        "technique": technique("crown-down"),
        "choices": Choices(needle=OPEN_30),
    }
    return PlanInput(**(fields | more))


def block(**more: Any) -> PlanInput:
    """A training block, its end in sight."""
    fields: dict[str, Any] = {
        "tooth": "11",
        "setting": Setting.BLOCK,
        "canals": (canal("single", "single", DirectSight(seen_mm=16.5, reference_point="top"), point="top"),),
        "kit": CHECK_KIT,
        "technique": technique("crown-down"),
        "choices": Choices(needle=OPEN_30),
    }
    return PlanInput(**(fields | more))


def technique(key: str) -> Technique:
    return provided_techniques()[key]
