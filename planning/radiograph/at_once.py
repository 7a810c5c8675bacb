"""The figures by which a phone says at once, and with no connection, how sure its numbers are."""

from __future__ import annotations

from dataclasses import dataclass

from planning.foundation.bounds import within
from planning.foundation.tables import Figures
from planning.radiograph import spread


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkFigures:
    """How far off marks and known objects are, and the bounds of what an image or an object can be."""

    interval_share: float
    """Share of cases in which an interval holds the true value."""
    reach: float
    """Standard deviations from the middle of such an interval to its end."""
    tapped_px: float
    """One standard deviation, along each axis, of a mark that does not tell its zoom."""
    screen_spread_px: float
    """One standard deviation of a finger on the screen; a mark that tells its zoom is off by this over the zoom."""
    pixel_spread_px: float
    """One standard deviation of a place within a pixel, however large the image is shown."""
    screen_px_per_mm_least: float
    """Marks that were set on an image shown smaller than this are asked for again."""
    instrument_spread_mm: float
    """One standard deviation of a known object's length, by what it is."""
    ruler_spread_mm: float
    ball_spread_mm: float
    object_least_mm: float
    object_most_mm: float
    object_off_share: float
    """By how much of its length the marks of a known object may be off."""
    pixel_least_mm: float
    pixel_most_mm: float
    length_most_mm: float
    """No canal is longer."""
    turn_deg: float
    """A mark at which the line turns more sharply than this is asked about."""


def mark_figures(figures: Figures) -> MarkFigures:
    return MarkFigures(
        interval_share=figures["interval.share"],
        reach=spread.reach_of(figures),
        tapped_px=figures["tapping.spread"],
        screen_spread_px=figures["tapping.screen_spread"],
        pixel_spread_px=figures["tapping.pixel_spread"],
        screen_px_per_mm_least=figures["tapping.screen_px_per_mm"],
        instrument_spread_mm=figures["scale.instrument_spread"],
        ruler_spread_mm=figures["scale.ruler_spread"],
        ball_spread_mm=figures["scale.ball_spread"],
        object_least_mm=figures["scale.object_least"],
        object_most_mm=figures["scale.object_most"],
        object_off_share=figures["scale.object_off_share"],
        pixel_least_mm=figures["scale.least"],
        pixel_most_mm=figures["scale.most"],
        length_most_mm=within("length").most,
        turn_deg=figures["marks.turn_deg"],
    )
