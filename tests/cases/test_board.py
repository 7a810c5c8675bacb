"""The board on paper and the one on the screen are laid out alike: `tests/shared/boards.json`, the other's judge."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from cases.exports.board import DrawnCanal, Layout, Points, lay_out, side_of
from planning.contract.expected import ProfilePoint

ROUNDED = 1e-9
BOARDS = json.loads((Path(__file__).parent.parent / "shared" / "boards.json").read_text(encoding="utf-8"))["cases"]


def drawn(canal: dict[str, Any]) -> DrawnCanal:
    def outline(points: list[list[float]]) -> tuple[ProfilePoint, ...]:
        return tuple(ProfilePoint(from_reference_mm=depth, diameter_mm=wide) for depth, wide in points)

    return DrawnCanal(
        name=canal["canal"],
        reference_point=canal["reference_point"],
        end_mm=canal["end_mm"],
        joins=canal["joins"],
        planned=outline(canal["planned"]),
        planned_end_mm=canal["planned_end_mm"],
        done=outline(canal["done"]),
        notes=(),
    )


@pytest.mark.parametrize("case", BOARDS, ids=lambda case: case["name"])
def test_a_board_is_laid_out_as_the_shared_case_says(case: dict[str, Any]) -> None:
    canals = [drawn(canal) for canal in case["canals"]]
    layout = lay_out(case["width"], case["height"], canals)
    assert {key: getattr(layout, key) for key in case["board"]} == pytest.approx(case["board"], abs=ROUNDED)
    for index, (canal, expected) in enumerate(zip(canals, case["polygons"], strict=True)):
        for kind, outline, end_mm in (
            ("done", canal.done, canal.end_mm),
            ("planned", canal.planned, canal.planned_end_mm),
        ):
            points = layout.profile(index, outline, end_mm, side_of(canals, index))
            assert _near(points, expected[kind]), f"{canal.name} {kind}"


def _near(points: Points, written: str) -> bool:
    """Whether they are the same to the tenth of a pixel that is written."""
    pairs = [tuple(map(float, pair.split(","))) for pair in written.split()]
    return len(points) == len(pairs) and all(
        abs(x - a) <= 0.051 and abs(y - b) <= 0.051 for (x, y), (a, b) in zip(points, pairs, strict=True)
    )


def test_the_first_is_what_hand_arithmetic_says() -> None:
    """294 px less 42 above and 52 below are 200 px for 20 mm; a canal in the middle of a column 128 px wide."""
    layout: Layout = lay_out(232, 294, [drawn(BOARDS[0]["canals"][0])])
    assert (layout.px_per_mm, layout.y(20)) == (10, 242)
    assert layout.centre(0) == 28 + (232 - 28 - 4 - 128) / 2 + 64
    # 0.74 of 128 px over 1 mm at 10 px: 9.472 times, in steps of a half.
    assert layout.widened == 9
