"""A plan of a tooth as it usually is, everything measured, warns of next to nothing: else nobody reads what it says."""

from __future__ import annotations

import pytest

from planning.anatomy import Tooth, all_teeth, usual_range
from planning.contract.plan_input import Choices, Kit, Needle, Pattern, PlanInput, RootInput
from planning.contract.plan_value import Severity
from planning.instruments.iso_3630 import Use
from planning.techniques.files import provided_techniques
from planning.whole_tooth.plan import plan
from tests.planning.given import HAND_SIZES, canal, cone, confirmed, hand, molar, rotary

SIZES = (25, 30, 35, 40, 45, 50)
SIDE_VENTED_30 = Needle(gauge=30, tip="side_vented")
LONG_KIT = Kit(
    name="for long teeth",
    instruments=(
        *(hand(size, 31) for size in HAND_SIZES),
        *(rotary(25, steep, Use.CORONAL, length_mm=31) for steep in (10, 8)),
        *(rotary(size, 4, length_mm=31) for size in SIZES),
    ),
    needles=(SIDE_VENTED_30,),
    filling=tuple(cone(size, taper) for taper in (2, 4) for size in SIZES),
)


def ordinary(tooth: Tooth, technique: str) -> PlanInput:
    """All usual canals, each measured at the tooth's published mean; 20 mm, common practice, where none is known."""
    known = usual_range(tooth)
    mean_mm = 20.0 if known is None or known.mean_mm is None else known.mean_mm
    lengths = confirmed(mean_mm, mean_mm - 1, 0.5, "cusp")
    roots = {usual.root for usual in tooth.canals}
    return molar(
        tooth=tooth.iso,
        canals=tuple(canal(usual.name, usual.root, *lengths, point="cusp") for usual in tooth.canals),
        roots=tuple(RootInput(name=root, pattern=Pattern.SEPARATE) for root in sorted(roots)),
        kit=LONG_KIT,
        technique=provided_techniques()[technique],
        choices=Choices(needle=SIDE_VENTED_30),
    )


PLANNED = [tooth for tooth in all_teeth() if tooth.canals and not tooth.primary]


@pytest.mark.parametrize("technique", provided_techniques())
@pytest.mark.parametrize("tooth", PLANNED, ids=lambda tooth: tooth.iso)
def test_an_ordinary_plan_on_the_bench_carries_at_most_one_caution(tooth: Tooth, technique: str) -> None:
    warned = [each for each in plan(ordinary(tooth, technique)).cautions if each.severity is not Severity.NOTE]
    assert len(warned) <= 1, [each.says for each in warned]
