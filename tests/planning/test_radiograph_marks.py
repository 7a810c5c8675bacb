"""Marks on one image to lengths, readings and places. Drawn canals with known answers; published worked examples."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from scipy.stats import binom

from planning.foundation.encoding import decode, encode
from planning.foundation.errors import PlanningError
from planning.foundation.tables import Figures
from planning.lengths.readings import ConfirmingImage, PreOperativeImage, Ratio
from planning.lengths.working_length import LengthContext, settle
from planning.radiograph import ImageMarks, Measured, mark_figures, measure
from planning.radiograph.values import CanalLine, KnownObject, LineMeasured, Pixel, PixelSpacing, SpacingFacts

SQUARE = SpacingFacts(in_patient=PixelSpacing(row_mm=0.03, column_mm=0.03), calibration="fiducial")
POINT = "MB cusp"


def down(*mm: float, across_mm: float = 0.0, px_mm: float = 0.03) -> tuple[Pixel, ...]:
    """Marks straight down the image."""
    return tuple(Pixel(x_px=400 + across_mm / px_mm, y_px=100 + each / px_mm) for each in mm)


def measured_line(
    line: CanalLine, facts: SpacingFacts | None = SQUARE, known: KnownObject | None = None
) -> LineMeasured:
    return measure(ImageMarks(lines=(line,), facts=facts, known=known), Figures()).lines[0]


def instrument(length_mm: float, image_mm: float, px_mm: float = 0.03) -> KnownObject:
    return KnownObject(what="instrument", length_mm=length_mm, points=down(0, image_mm, px_mm=px_mm))


def test_a_straight_line_is_as_long_as_its_pixels() -> None:
    measured = measured_line(CanalLine(canal="MB", points=down(0, 9, 21.5), reference_point=POINT))
    assert measured.length_mm is not None
    assert measured.length_mm.value == pytest.approx(21.5)
    # By hand: 2 % of 21.5 mm, both ends a pixel of 0.03 mm off; 1.96 of that to either side.
    off = 1.96 * math.hypot(0.02 * 21.5, math.sqrt(2) * 0.03)
    assert isinstance(measured.reading, PreOperativeImage)
    interval = measured.reading.interval
    assert measured.reading == PreOperativeImage(tooth_mm=21.5, reference_point=POINT, interval=interval)
    assert interval is not None
    assert interval.least_mm == pytest.approx(21.5 - off, abs=0.01)
    assert interval.most_mm == pytest.approx(21.5 + off, abs=0.01)
    assert interval.rests_on == "fiducial"


def test_without_a_scale_there_are_ratios_and_angles_alone() -> None:
    points = (*down(0, 6, 12), *down(15, across_mm=1), *down(17, across_mm=2.5))
    measured = measured_line(
        CanalLine(canal="MB", points=points, leaves=2, reference_point=POINT, places_mm=(3,)), facts=None
    )
    assert (measured.length_mm, measured.reading, measured.places) == (None, None, (None,))
    assert measured.bend is not None
    assert measured.bend.radius_mm is None
    # By hand: 2.5 across and 5 down from where it leaves.
    assert measured.bend.schneider_deg.value == pytest.approx(math.degrees(math.atan(2.5 / 5)), abs=1e-2)
    half = measured_line(CanalLine(canal="MB", points=down(0, 10)), facts=None).length_columns
    assert half == pytest.approx(10 / 0.03, abs=1e-2)


def test_the_ratio_of_an_instrument_in_the_image() -> None:
    """Worked example of the ratio method: 20.0 mm seen as 22.0, the tooth as 24.2: tooth 22.0, working length 21.0."""
    facts = SpacingFacts(at_detector=PixelSpacing(row_mm=0.03, column_mm=0.03))
    line = CanalLine(canal="MB", points=down(0, 24.2), reference_point=POINT)
    measured = measured_line(line, facts, instrument(20.0, 22.0))
    assert measured.length_mm is not None
    assert measured.length_mm.value == pytest.approx(22.0)
    assert isinstance(measured.reading, Ratio)
    assert replace(measured.reading, interval=None) == Ratio(
        instrument_mm=20.0, instrument_on_image_mm=22.0, tooth_on_image_mm=24.2, reference_point=POINT
    )
    about = LengthContext(canal="MB", reference_point=POINT, setting="extracted")
    assert settle([measured.reading], about, Figures()).working_length_mm == pytest.approx(21.0)


# Worked examples by Ingle's method: the gap is added to what was set, a tip past the end takes away.
@pytest.mark.parametrize(
    ("set_mm", "short_mm", "tooth_mm"), [(22.0, 1.5, 23.5), (20.0, -1.0, 19.0), (21.0, -0.5, 20.5)]
)
def test_a_confirming_image(set_mm: float, short_mm: float, tooth_mm: float) -> None:
    tip = down(21 - short_mm)[0]
    line = CanalLine(canal="MB", points=down(0, 10, 21), tip=tip, set_mm=set_mm, reference_point=POINT)
    measured = measured_line(line)
    assert measured.tip_short_mm is not None
    assert measured.tip_short_mm.value == pytest.approx(short_mm)
    assert isinstance(measured.reading, ConfirmingImage)
    assert measured.reading.set_mm + measured.reading.tip_short_mm == pytest.approx(tooth_mm)


def test_a_tip_on_the_end_is_neither_short_nor_past() -> None:
    points = down(0, 10, 21)
    tip = measured_line(
        CanalLine(canal="MB", points=points, tip=points[-1], set_mm=20, reference_point=POINT)
    ).tip_short_mm
    assert tip is not None
    assert tip.value == 0
    assert tip.most is not None
    assert tip.least < 0 < tip.most


@pytest.mark.parametrize(("set_mm", "deeper_mm"), [(19.0, 1.0), (20.0, 0.0), (21.5, -1.5)])
def test_a_tip_against_its_stop(set_mm: float, deeper_mm: float) -> None:
    """By hand: the end at 21 and the tip 1 short of it make 20, whatever the stop said."""
    line = CanalLine(canal="MB", points=down(0, 10, 21), tip=down(20)[0], set_mm=set_mm, reference_point=POINT)
    tip = measured_line(line).tip_deeper_mm
    assert tip is not None
    assert tip.value == pytest.approx(deeper_mm)
    assert tip.most is not None
    assert tip.least < tip.value < tip.most


SHARED = json.loads((Path(__file__).parents[1] / "shared/marks.json").read_text(encoding="utf-8"))


def test_the_figures_that_the_phone_is_held_to_are_those_of_the_data() -> None:
    assert encode(mark_figures(Figures())) == SHARED["figures"]


@pytest.mark.parametrize("case", SHARED["sure"], ids=lambda case: case["name"])
def test_how_sure_a_worked_case_is_that_the_phone_answers_too(case: dict[str, Any]) -> None:
    measured = measure(decode(ImageMarks, {**case["marks"], "facts": case.get("facts")}), Figures())
    line = measured.lines[0]
    assert measured.scale.spread_share == (case["share"] and pytest.approx(case["share"], rel=1e-6))
    intervals = {
        "length_mm": line.length_mm,
        "tip_short_mm": line.tip_short_mm,
        "tip_deeper_mm": line.tip_deeper_mm,
        "schneider_deg": line.bend.schneider_deg if line.bend else None,
    }
    for name, between in intervals.items():
        known = case.get(name)
        assert (between and [between.value, between.least, between.most]) == (known and pytest.approx(known, abs=2e-3))


@pytest.mark.parametrize("case", SHARED["doubts"], ids=lambda case: case["name"])
def test_what_is_asked_about_that_the_phone_asks_too(case: dict[str, Any]) -> None:
    points = tuple(Pixel(x_px=x, y_px=y) for x, y in case["marks"])
    doubts = measure(ImageMarks(lines=(CanalLine(canal="P", points=points),)), Figures()).lines[0].doubts
    assert [[doubt.point, doubt.kind] for doubt in doubts] == case["doubts"]


def test_a_tip_without_its_stop_has_nothing_to_be_held_against() -> None:
    assert measured_line(CanalLine(canal="MB", points=down(0, 10, 21), tip=down(20)[0])).tip_deeper_mm is None


def test_a_tip_where_its_stop_has_it_is_found_there_as_often_as_the_interval_says() -> None:
    """A scale 2 % off, marks a pixel off, a stop 0.15 mm off, one standard deviation each, as the figures say."""
    draws, held = 500, 0
    draw = np.random.default_rng(12)
    for _ in range(draws):
        px_mm = 0.03 * (1 + draw.normal(0, 0.02))
        seen = [Pixel(x_px=400 + draw.normal(), y_px=100 + mm / px_mm + draw.normal()) for mm in (0, 6, 12, 21, 19.5)]
        set_mm = 19.5 + draw.normal(0, 0.15)
        deeper = measured_line(CanalLine(canal="MB", points=tuple(seen[:4]), tip=seen[4], set_mm=set_mm)).tip_deeper_mm
        assert deeper is not None
        held += deeper.least <= 0 <= (deeper.most or 0)
    least, most = binom.interval(0.999, draws, 0.95)
    assert least <= held <= most


def test_a_stop_is_drawn_back_where_it_lies() -> None:
    measured = measured_line(CanalLine(canal="MB", points=down(0, 10, 21), places_mm=(0, 19.5, 21, 22)))
    assert [place and (place.x_px, round(place.y_px, 3)) for place in measured.places] == [
        (400, 100),
        (400, 750),
        (400, 800),
        None,
    ]


@pytest.mark.parametrize("spacing", [(0.03, 0.03), (0.05, 0.03), (0.02, 0.035)])
def test_a_length_lies_within_its_interval_as_often_as_it_says(spacing: tuple[float, float]) -> None:
    """A bent canal and an instrument marked a pixel off, its stop as far off as the figures say."""
    row_mm, column_mm = spacing
    draws, held = 500, 0
    draw = np.random.default_rng(11)
    turn = np.radians(np.linspace(0, 50, 5))
    curve = np.column_stack((10 * (1 - np.cos(turn)), 12 + 10 * np.sin(turn)))
    canal = np.vstack(([[0.0, 0.0], [0.0, 6.0]], curve))
    exact = 12 + 10 * math.radians(50)
    facts = SpacingFacts(at_detector=PixelSpacing(row_mm=row_mm, column_mm=column_mm))
    for _ in range(draws):
        marks = canal / [column_mm, row_mm] + 300 + draw.normal(0, 1, canal.shape)
        ends = np.array([[0, 0], [0, 18 + draw.normal(0, 0.15)]]) / [column_mm, row_mm] + 300
        ends += draw.normal(0, 1, ends.shape)
        known = KnownObject(what="instrument", length_mm=18, points=tuple(Pixel(x_px=x, y_px=y) for x, y in ends))
        line = CanalLine(canal="MB", points=tuple(Pixel(x_px=x, y_px=y) for x, y in marks))
        length = measured_line(line, facts, known).length_mm
        assert length is not None
        held += length.least <= exact <= (length.most or 0)
    least, most = binom.interval(0.999, draws, 0.95)
    assert least <= held <= most


USUAL = CanalLine(canal="MB", points=(*down(0, 6, 12), *down(15, across_mm=1), *down(17, across_mm=2.5)), leaves=2)


@pytest.mark.parametrize(
    ("changes", "code", "pointer"),
    [
        ({"points": down(0)}, "points-do-not-fit", ("points",)),
        ({"points": ()}, "points-do-not-fit", ("points",)),
        ({"points": down(0, 6, 6.01, 12)}, "points-do-not-fit", ("points", 2)),
        ({"points": down(0, 20, 40), "leaves": 1}, "points-do-not-fit", ("points",)),
        ({"leaves": 4}, "points-do-not-fit", ("leaves",)),
        ({"leaves": 0}, "points-do-not-fit", ("leaves",)),
        ({"leaves": 9}, "points-do-not-fit", ("leaves",)),
        ({"orifice": 3}, "points-do-not-fit", ("leaves",)),
        ({"orifice": -1}, "out-of-bounds", ("orifice",)),
        ({"straight_again": 2}, "points-do-not-fit", ("straight_again",)),
        ({"leaves": None, "straight_again": 3}, "points-do-not-fit", ("leaves",)),
        ({"points": down(0, 10, 15, 12, 5)}, "points-do-not-fit", ("points", 4)),
        ({"points": down(*range(41))}, "too-much-work", ("points",)),
        ({"places_mm": tuple(range(41))}, "too-much-work", ("places_mm",)),
    ],
)
def test_marks_that_cannot_be_are_refused(changes: dict[str, Any], code: str, pointer: tuple[str | int, ...]) -> None:
    with pytest.raises(PlanningError) as refused:
        measured_line(replace(USUAL, **changes))
    assert (refused.value.code, refused.value.pointer) == (code, ("lines", 0, *pointer))


@pytest.mark.parametrize("within", [0, -1, 50])
def test_marks_as_sure_as_nothing_are_refused(within: float) -> None:
    with pytest.raises(PlanningError) as refused:
        measure(ImageMarks(lines=(USUAL,), tapped_within_px=within), Figures())
    assert refused.value.pointer == ("tapped_within_px",)


def test_more_lines_than_a_tooth_has_canals_are_refused() -> None:
    with pytest.raises(PlanningError, match="9 lines"):
        measure(ImageMarks(lines=(USUAL,) * 9), Figures())


def test_several_canals_share_one_scale() -> None:
    other = CanalLine(canal="D", points=down(0, 8, 20))
    measured: Measured = measure(ImageMarks(lines=(USUAL, other), facts=SQUARE), Figures())
    assert [line.canal for line in measured.lines] == ["MB", "D"]
    assert measured.lines[1].length_mm is not None
    assert measured.lines[1].length_mm.value == pytest.approx(20)
