"""One instrument put into a canal that is known: where it stops, what the canal becomes.

Light touch is that of the contact-depth estimate. A push is the same with a greater load. What is cut leaves dust at
the end; packed, it blocks the canal as high as its volume fills it. Past resistance in a curve a push leaves a ledge.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from planning.canal.profile import Line, Stand, upper, upto, volume_mm3
from planning.depth.contact_depth import OVER_MM2, LightTouch, opened, rest_mm, to_resistance_mm
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument, Motion, corners
from planning.practice.mistakes import PracticeMistake, mistake
from planning.practice.truth import Truth

APART_MM = 1e-6  # rounding error of depths
LOOKS = 40  # halvings of a search: to below a nanometre


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalNow:
    """A canal as it was worked so far."""

    shape: Line
    dust_mm3: float = 0.0
    """What lies at the end since the last recapitulation."""
    block_mm: float | None = None
    """Nothing passes this depth before the dust is loosened."""
    ledge_mm: float | None = None
    """Only a small hand file passes this depth."""
    over_wide_mm: float = 0.0
    """How much wider the end is than instruments at their stops would have left it."""
    size_skipped: bool = False
    """The last size was left out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stopped:
    """Where an instrument stopped, and the canal after it."""

    depth_mm: float
    canal: CanalNow
    mistakes: tuple[PracticeMistake, ...] = ()


def put_in(
    truth: Truth, canal: CanalNow, instrument: Instrument, stop_mm: float, *, to_length: bool, force: bool, small: bool
) -> Stopped:
    """The instrument led in as far as its stop, what is in the way and the hand allow, and the canal opened by it.

    `to_length`: a hand instrument that is worked until it is there; `small`: it passes a ledge.
    """
    real, end_mm = truth.real(instrument), canal.shape[-1][0]
    way_mm = min(stop_mm, *_in_the_way(canal, small=small))
    # Past the end there is a hole as wide as the end: nothing is known of what lies beyond.
    shape = (*canal.shape, (stop_mm, canal.shape[-1][1])) if stop_mm > end_mm else canal.shape
    light_mm = to_resistance_mm(real, shape, way_mm, truth.touch)
    depth_mm, pushed = light_mm, False
    if to_length and instrument.motion is Motion.HAND and not canal.size_skipped:
        depth_mm = way_mm
    elif force:
        times = Figures()["practice.force_times"]
        hard = replace(truth.touch, limit_mm2=truth.touch.limit_mm2 * times)
        depth_mm = to_resistance_mm(real, shape, way_mm, hard)
        pushed = light_mm < min(stop_mm, way_mm) - APART_MM
    after, mistakes = _opened(canal, real, depth_mm, truth.touch)
    if pushed:
        after, harm = _pushed(truth, canal, after, light_mm)
        mistakes = (*mistakes, harm)
    return Stopped(depth_mm=depth_mm, canal=replace(after, size_skipped=False), mistakes=mistakes)


def felt_mm(truth: Truth, canal: CanalNow, instrument: Instrument, stop_mm: float) -> float:
    """How deep a hand instrument goes that feels the width and does not cut.

    Within the tolerance of its tip it still seats.
    """
    slack_mm = Figures()["instrument.tip_within"]
    thin = tuple((z, max(0.0, d - slack_mm)) for z, d in corners(truth.real(instrument)))
    way_mm = min(stop_mm, *_in_the_way(canal, small=False))
    return rest_mm(thin, canal.shape, way_mm, OVER_MM2)


def recapitulated(canal: CanalNow) -> tuple[CanalNow, bool]:
    """The canal after fresh irrigant and the small file, and whether the file came to its stop."""
    figures = Figures()
    if canal.block_mm is None:
        return replace(canal, dust_mm3=0.0), True
    dust_mm3 = canal.dust_mm3 * (1 - figures["practice.washed_share"])
    block_mm = _filled_to_mm(canal.shape, dust_mm3)
    if canal.shape[-1][0] - block_mm < figures["practice.block_least"]:
        return replace(canal, dust_mm3=0.0, block_mm=None), True
    return replace(canal, dust_mm3=dust_mm3, block_mm=block_mm), False


def not_recapitulated(canal: CanalNow) -> tuple[CanalNow, PracticeMistake]:
    """The canal when the dust is left where it is."""
    block_mm = _block_mm(canal)
    if block_mm is None:
        return canal, mistake("not-recapitulated")
    return replace(canal, block_mm=block_mm), mistake("blocked", at_mm=block_mm)


def _in_the_way(canal: CanalNow, *, small: bool) -> list[float]:
    ledge_mm = None if small else canal.ledge_mm
    # A place far below any canal, so that there is always one.
    return [at_mm for at_mm in (canal.block_mm, ledge_mm) if at_mm is not None] or [float("inf")]


def _opened(
    canal: CanalNow, real: Instrument, depth_mm: float, touch: LightTouch
) -> tuple[CanalNow, tuple[PracticeMistake, ...]]:
    """The canal opened by an instrument; past its end, as wide there as the instrument is where it passes."""
    end_mm = canal.shape[-1][0]
    at_end = opened(real, canal.shape, min(depth_mm, end_mm), touch)
    shape, over_mm = at_end, 0.0
    mistakes: tuple[PracticeMistake, ...] = ()
    if depth_mm > end_mm + APART_MM:
        through = Stand(instrument=real, tip_mm=depth_mm).line(canal.shape[0][0], touch.overcut_mm)
        shape = upper(canal.shape, upto(through, end_mm))
        over_mm = shape[-1][1] - at_end[-1][1]
        mistakes = (mistake("past-end", wider_mm=over_mm),)
    cut_mm3 = max(0.0, volume_mm3(shape) - volume_mm3(canal.shape))
    dust_mm3 = canal.dust_mm3 + cut_mm3 * Figures()["practice.dust_share"]
    return replace(canal, shape=shape, dust_mm3=dust_mm3, over_wide_mm=max(canal.over_wide_mm, over_mm)), mistakes


def _pushed(truth: Truth, before: CanalNow, after: CanalNow, light_mm: float) -> tuple[CanalNow, PracticeMistake]:
    """What a push past resistance does: in the curve a ledge where it was met, else its dust is packed."""
    curve_mm = truth.asked.curve_start_mm
    if curve_mm is not None and light_mm >= curve_mm:
        return replace(after, ledge_mm=light_mm), mistake("forced-ledge", at_mm=light_mm)
    # Pushed, all that was cut goes ahead of the tip: none of it comes up between the flutes.
    packed_mm3 = before.dust_mm3 + max(0.0, volume_mm3(after.shape) - volume_mm3(before.shape))
    packed = replace(after, dust_mm3=packed_mm3)
    block_mm = _block_mm(packed)
    if block_mm is None:
        return packed, mistake("forced")
    return replace(packed, block_mm=block_mm), mistake("forced-block", at_mm=block_mm)


def _block_mm(canal: CanalNow) -> float | None:
    """How high the dust blocks the canal; None where a plug so short is not felt."""
    block_mm = _filled_to_mm(canal.shape, canal.dust_mm3)
    return None if canal.shape[-1][0] - block_mm < Figures()["practice.block_least"] else block_mm


def _filled_to_mm(shape: Line, dust_mm3: float) -> float:
    """The depth up to which so much dust fills the canal from its end."""
    whole_mm3, high_mm, low_mm = volume_mm3(shape), shape[0][0], shape[-1][0]
    for _ in range(LOOKS):
        middle_mm = (high_mm + low_mm) / 2
        if whole_mm3 - volume_mm3(upto(shape, middle_mm)) > dust_mm3:
            high_mm = middle_mm
        else:
            low_mm = middle_mm
    return low_mm
