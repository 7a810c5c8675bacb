"""What goes in and what comes out: marks in pixels, measures in millimetres."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated, Literal

from planning.anatomy.curvature import BendShape, CurveClass
from planning.foundation.bounds import within
from planning.foundation.counts import at_most
from planning.foundation.errors import Pointer
from planning.lengths.readings import Reading

Calibration = Literal["fiducial", "geometry"]
KnownWhat = Literal["instrument", "ruler", "ball"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Pixel:
    """A place on the image: columns from the left edge, rows from the upper one; halves and tenths are meant."""

    x_px: Annotated[float, within("image_place")]
    y_px: Annotated[float, within("image_place")]
    screen_px_per_px: Annotated[float, within("mark_zoom")] | None = None
    """How many pixels of the screen one pixel of the image was wide when the mark was set or last moved. How far off
    the mark is follows from it. None: not told."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PixelSpacing:
    """From one pixel to the next, as the image file says it."""

    row_mm: Annotated[float, within("pixel_size")]
    """Downwards, from row to row."""
    column_mm: Annotated[float, within("pixel_size")]
    """To the right, from column to column."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SpacingFacts:
    """What the image file says of its pixels. DICOM names stand in `planning.radiograph.scale`."""

    in_patient: PixelSpacing | None = None
    at_detector: PixelSpacing | None = None
    scanned: PixelSpacing | None = None
    calibration: Calibration | None = None
    magnification: Annotated[float, within("magnification")] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KnownObject:
    """Something of known length on the image."""

    what: KnownWhat
    length_mm: Annotated[float, within("known_object")]
    """An instrument from its stop to its tip; a ruler between two lines; a ball across."""
    points: Annotated[tuple[Pixel, ...], at_most("points")]
    """Marks along it, both ends at least: an instrument in a bent canal is bent."""


class ScaleState(StrEnum):
    CALIBRATED = "calibrated"
    """Good at the depth of what it was calibrated on."""
    ESTIMATED = "estimated"
    """Corrected for a magnification that was assumed."""
    AT_DETECTOR = "at_detector"
    """Nothing corrected: the image is larger than the tooth."""
    UNCALIBRATED = "uncalibrated"
    """Only ratios and angles can be had."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """How large a pixel is, and what that rests on."""

    state: ScaleState
    row_mm: float | None
    column_mm: float | None
    row_per_column: float
    """How much taller than wide a pixel is; 1 where nothing is known."""
    spread_share: float | None
    """One standard deviation, as a share of any length."""
    rests_on: str
    """A code of what it rests on."""
    says: str
    do: str
    """What makes it better; empty where nothing does."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalLine:
    """Marks along one canal on the image, the reference point first, the root's end last."""

    canal: str
    points: Annotated[tuple[Pixel, ...], at_most("points")]
    orifice: Annotated[int, within("point_number")] | None = None
    """Which point is the orifice: above it the line is straight, as an instrument is."""
    leaves: Annotated[int, within("point_number")] | None = None
    """Which point is where the canal leaves the axis of its coronal part."""
    straight_again: Annotated[int, within("point_number")] | None = None
    """Which point is where the bend ends and a straight part runs on to the end."""
    tip: Pixel | None = None
    """Tip of an instrument that stands in the canal."""
    set_mm: Annotated[float, within("length")] | None = None
    """The stop that was set on that instrument."""
    reference_point: str = ""
    after_flaring: bool = False
    places_mm: Annotated[tuple[Annotated[float, within("told_depth_mm")], ...], at_most("points")] = ()
    """Distances from the reference point whose places on the image are wanted: stops, a junction."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ImageMarks:
    """What was marked on one image."""

    lines: Annotated[tuple[CanalLine, ...], at_most("lines")]
    facts: SpacingFacts | None = None
    known: KnownObject | None = None
    """Counts before what the file says."""
    tapped_within_px: Annotated[float, within("mark_within")] | None = None
    """One standard deviation of a mark that does not tell its zoom; None: as the figures have it."""

    def places(self) -> Iterator[tuple[Pointer, Pixel]]:
        """Every mark with its path: of the known object, of every line, and the tips."""
        for number, point in enumerate(self.known.points if self.known else ()):
            yield ("known", "points", number), point
        for number, line in enumerate(self.lines):
            yield from ((("lines", number, "points", place), point) for place, point in enumerate(line.points))
            if line.tip is not None:
                yield ("lines", number, "tip"), line.tip


@dataclass(frozen=True, slots=True, kw_only=True)
class Between:
    """A measure with the ends of its interval; the share that an interval holds is a figure."""

    value: Annotated[float, within("interval_end")]
    least: Annotated[float, within("interval_end")]
    most: Annotated[float, within("interval_end")] | None
    """None: no upper end, the radius of what may be straight."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OneBend:
    """One of the bends of a canal that bends to both sides."""

    radius_mm: Between
    arc_deg: float
    arc_mm: float
    schneider_deg: float
    """From the way the canal runs where this bend begins to where it ends: half the arc's."""
    middle_from_end_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasuredBend:
    """How the canal bends on this image. Of a double bend radius, arc and middle are those of the tightest."""

    schneider_deg: Between
    radius_mm: Between | None
    """None: straight, no scale, or the marks do not tell one bend from the other."""
    arc_deg: float | None
    """Between the tangents at both ends of the arc."""
    arc_mm: float | None
    begins_mm: float | None
    """From the reference point to where the canal leaves its axis, along it."""
    middle_from_end_mm: float | None
    """From the canal's end to the middle of its bend, along it."""
    classes: tuple[CurveClass, ...]
    """What each published scheme calls Schneider's angle."""
    shape: BendShape = BendShape.ONE
    bends: tuple[OneBend, ...] = ()
    """Each of a double bend, from the orifice on; empty for any other."""
    caution: str = ""
    """What is wrong with it and what to do; empty for a single bend."""


class DoubtKind(StrEnum):
    TURNS_BACK = "turns_back"
    """The line runs back from here: marks are out of order, or one was misplaced."""
    SHARP = "sharp"
    """The line turns here more sharply than any canal: a mark was misplaced."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """A mark about which the person who set it is asked; it is measured all the same."""

    point: int
    kind: DoubtKind


@dataclass(frozen=True, slots=True, kw_only=True)
class LineMeasured:
    canal: str
    length_mm: Between | None
    """Along the curve from the reference point to the end; None without a scale."""
    length_columns: float
    """The same in widths of a pixel: for ratios."""
    orifice_mm: float | None
    """From the reference point to the orifice; None without a scale or without that mark."""
    bend: MeasuredBend | None
    """None: where the canal leaves its axis was not marked."""
    tip_short_mm: Between | None
    """From the tip to the root's end; below 0 the tip is past it."""
    tip_deeper_mm: Between | None = None
    """How much deeper the tip lies than the stop that was set says; below 0 less deep. None without both."""
    reading: Reading | None
    """What this is as a reading of the canal; None without a scale or a reference point."""
    places: tuple[Pixel | None, ...]
    """Where the wanted distances lie; None beyond the line's end, or without a scale."""
    doubts: tuple[Doubt, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    scale: Scale
    lines: tuple[LineMeasured, ...]
    touch_says: str = ""
    """What the intervals rest on: the zoom at every touch, or what was assumed; empty in older measurements."""
