"""All canals of a tooth side by side on one axis of millimetres, as the app draws them.

The geometry's twin is `frontend/src/parts/depth-board/geometry.ts`, in the same units: pixels of 1/96 inch from the
left top. Both are held to `tests/shared/boards.json`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, zip_longest
from math import floor, inf

from planning.contract.expected import ProfilePoint

NOTE_PX, NARROW_PX = 12.5, 60
GUTTER, RIGHT, WIDEST_COLUMN, FILLED_SHARE = 28, 4, 128, 0.74
LEAST_DEEP_MM, LEAST_PX_PER_MM, LEAST_WIDE_MM = 10, 4, 0.5
LEANING_MM, LEAN_SHARE = 5, 0.14
LETTER_SHARE = 0.56

Points = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnCanal:
    """What is drawn of a canal, in millimetres from the reference point."""

    name: str
    reference_point: str
    end_mm: float | None
    """The number under it."""
    joins: str | None
    planned: tuple[ProfilePoint, ...]
    """Drawn as an outline, with its own end."""
    planned_end_mm: float | None
    done: tuple[ProfilePoint, ...]
    """Drawn filled."""
    notes: tuple[str, ...]
    """Under the number."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """The scales of a board, in pixels."""

    width: float
    height: float
    gutter: float
    top: float
    bottom: float
    column: float
    px_per_mm: float
    deepest_mm: float
    widened: float
    """How many times wider than long the drawing is; printed under it."""

    def y(self, depth_mm: float) -> float:
        return self.top + depth_mm * self.px_per_mm

    def centre(self, index: int) -> float:
        return self.gutter + self.column * (index + 0.5)

    def lean(self, depth_mm: float, end_mm: float, side: int) -> float:
        """How far the middle of a canal is drawn aside: a joining canal leans towards the one it joins."""
        share = max(0.0, (depth_mm - (end_mm - LEANING_MM)) / LEANING_MM)
        return side * LEAN_SHARE * self.column * min(1.0, share) ** 2

    def half(self, diameter_mm: float) -> float:
        return diameter_mm * self.widened * self.px_per_mm / 2

    def profile(self, index: int, outline: Sequence[ProfilePoint], end_mm: float | None, side: int) -> Points:
        """An outline at true taper, widened, as a polygon; empty where there is none."""
        shown = _within(outline, inf if end_mm is None else end_mm)
        if not shown:
            return ()
        end = shown[-1].from_reference_mm if end_mm is None else end_mm
        sides = [
            (self.centre(index) + self.lean(p.from_reference_mm, end, side), self.half(p.diameter_mm), p)
            for p in _with_steps(shown, end - LEANING_MM)
        ]
        right = [(middle + half, self.y(p.from_reference_mm)) for middle, half, p in sides]
        left = [(middle - half, self.y(p.from_reference_mm)) for middle, half, p in sides]
        return (*right, *reversed(left))


def lay_out(width: float, height: float, canals: Sequence[DrawnCanal]) -> Layout:
    """The board's scales for the room it is given."""
    room = width - GUTTER - RIGHT
    column = min(WIDEST_COLUMN, room / max(1, len(canals)))
    broken = any(len(lines(canal.reference_point, NOTE_PX, column - 2)) > 1 for canal in canals)
    top, bottom = (54 if broken and column >= NARROW_PX else 42), (28 if column < NARROW_PX else 52)
    points = [point for canal in canals for point in (*canal.done, *canal.planned)]
    ends = [end for canal in canals for end in (canal.end_mm, canal.planned_end_mm) if end is not None]
    deepest_mm = max(LEAST_DEEP_MM, *ends, *(point.from_reference_mm for point in points), LEAST_DEEP_MM)
    px_per_mm = max(LEAST_PX_PER_MM, (height - top - bottom) / deepest_mm)
    widest_mm = max([LEAST_WIDE_MM, *(point.diameter_mm for point in points)])
    widened = max(1.0, floor((2 * FILLED_SHARE * column) / (widest_mm * px_per_mm)) / 2)
    return Layout(
        width=width,
        height=height,
        gutter=GUTTER + (room - column * len(canals)) / 2,
        top=top,
        bottom=bottom,
        column=column,
        px_per_mm=px_per_mm,
        deepest_mm=deepest_mm,
        widened=widened,
    )


def side_of(canals: Sequence[DrawnCanal], index: int) -> int:
    """On which side the canal lies that this one joins: -1 left, 1 right, 0 where it joins none."""
    main = next((number for number, each in enumerate(canals) if each.name == canals[index].joins), index)
    return (main > index) - (main < index)


def lines(text: str, size: float, room: float) -> list[str]:
    """A label in one line if it fits the column, else one word a line."""
    return [text] if len(text) * size * LETTER_SHARE <= room else text.split(" ")


def _within(outline: Sequence[ProfilePoint], to_mm: float) -> list[ProfilePoint]:
    """The part of an outline from the reference point down to a depth, cut where it crosses them."""
    kept: list[ProfilePoint] = []
    for point, following in zip_longest(outline, outline[1:]):
        at = point.from_reference_mm
        if 0 <= at <= to_mm:
            kept.append(point)
        if following:
            kept += [_between(point, following, mm) for mm in (0.0, to_mm) if at < mm < following.from_reference_mm]
    return kept


def _between(a: ProfilePoint, b: ProfilePoint, mm: float) -> ProfilePoint:
    share = (mm - a.from_reference_mm) / (b.from_reference_mm - a.from_reference_mm)
    return ProfilePoint(from_reference_mm=mm, diameter_mm=a.diameter_mm + share * (b.diameter_mm - a.diameter_mm))


def _with_steps(outline: Sequence[ProfilePoint], from_mm: float) -> Iterator[ProfilePoint]:
    """The outline with a point every millimetre below `from_mm`, so that a leaning canal is drawn as a curve."""
    for point, following in pairwise(outline):
        yield point
        mm = -floor(-max(from_mm, point.from_reference_mm))
        while mm < following.from_reference_mm:
            if mm > point.from_reference_mm:
                yield _between(point, following, float(mm))
            mm += 1
    if outline:
        yield outline[-1]
