"""Readings of a canal's length, and the value a length is; `working_length` works one out from the others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Annotated, Literal

from planning.foundation.bounds import within
from planning.foundation.facts import Bears, Fact, NotTold
from planning.foundation.quantities import mm, um

ReferencePoint = Annotated[str, Fact("reference point", Bears.DEPTH)]
AfterFlaring = Annotated[bool, Fact("after coronal flaring", Bears.DEPTH)]
_KIND = NotTold("tells one kind of reading from another, which come and go as a whole")


@dataclass(frozen=True, slots=True, kw_only=True)
class ImageInterval:
    """How sure a measure is that marks on an image gave."""

    least_mm: Annotated[float, within("tip"), Fact("at least, by its marks", Bears.DEPTH)]
    most_mm: Annotated[float, within("tip"), Fact("at most, by its marks", Bears.DEPTH)]
    rests_on: Annotated[str, Fact("what the image's scale rests on", Bears.DEPTH)]
    """What the image's scale rested on, as a code."""


MarksInterval = Annotated[ImageInterval, Fact("how sure its marks are", Bears.DEPTH)]


@dataclass(frozen=True, slots=True, kw_only=True)
class PreOperativeImage:
    """Tooth length on a pre-operative image, from the reference point to the radiographic apex."""

    tooth_mm: Annotated[float, within("length"), Fact("tooth length", Bears.DEPTH)]
    reference_point: ReferencePoint
    after_flaring: AfterFlaring = False
    interval: MarksInterval | None = None
    """Of the tooth's length; None where it was not marked on an image."""
    method: Annotated[Literal["pre_operative_image"], _KIND] = "pre_operative_image"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ratio:
    """An instrument of known length on the same image gives the scale."""

    instrument_mm: Annotated[float, within("length"), Fact("instrument", Bears.DEPTH)]
    instrument_on_image_mm: Annotated[float, within("on_image"), Fact("instrument on the image", Bears.DEPTH)]
    tooth_on_image_mm: Annotated[float, within("on_image"), Fact("tooth on the image", Bears.DEPTH)]
    reference_point: ReferencePoint
    after_flaring: AfterFlaring = False
    interval: MarksInterval | None = None
    """Of the tooth's length; None where it was not marked on an image."""
    method: Annotated[Literal["ratio"], _KIND] = "ratio"

    @property
    def tooth_mm(self) -> float:
        """The tooth's length, as many times the instrument's as on the image."""
        return mm(um(self.tooth_on_image_mm / (self.instrument_on_image_mm / self.instrument_mm)))


@dataclass(frozen=True, slots=True, kw_only=True)
class ConfirmingImage:
    """An instrument at a known stop, and where its tip lies on the image."""

    set_mm: Annotated[float, within("length"), Fact("stop that was set", Bears.DEPTH)]
    """The stop that was actually set."""
    tip_short_mm: Annotated[float, within("tip"), Fact("tip short of the apex", Bears.DEPTH)]
    """How far the tip is short of the radiographic apex; below 0 it is past it."""
    reference_point: ReferencePoint
    after_flaring: AfterFlaring = False
    interval: MarksInterval | None = None
    """Of the tip's distance; None where it was not marked on an image."""
    method: Annotated[Literal["confirming_image"], _KIND] = "confirming_image"


@dataclass(frozen=True, slots=True, kw_only=True)
class ApexLocator:
    """An electronic reading, taken twice."""

    read_mm: Annotated[float, within("length"), Fact("read", Bears.DEPTH)]
    repeat_mm: Annotated[float, within("length"), Fact("read again", Bears.DEPTH)]
    mark: Annotated[Literal["apex", "constriction"], Fact("at the mark", Bears.DEPTH)]
    reference_point: ReferencePoint
    stable: Annotated[bool, Fact("display held still", Bears.DEPTH)] = True
    """The display held still, in a moist and not flooded canal clear of metal."""
    after_flaring: AfterFlaring = False
    method: Annotated[Literal["apex_locator"], _KIND] = "apex_locator"


@dataclass(frozen=True, slots=True, kw_only=True)
class DirectSight:
    """The tip seen at the end: of a training block's canal, or at an extracted tooth's foramen."""

    seen_mm: Annotated[float, within("length"), Fact("seen at", Bears.DEPTH)]
    reference_point: ReferencePoint
    after_flaring: AfterFlaring = False
    method: Annotated[Literal["direct_sight"], _KIND] = "direct_sight"


Reading = PreOperativeImage | Ratio | ConfirmingImage | ApexLocator | DirectSight


def tooth_mm(readings: Sequence[Reading]) -> float | None:
    """The tooth's length from the reference point to its end, by the last reading that gives it; None where none does.

    One taken in the canal goes before an estimate on an image, whichever came later.
    """
    in_canal: float | None = None
    estimated: float | None = None
    for reading in readings:
        match reading:
            case PreOperativeImage(tooth_mm=tooth_mm) | Ratio(tooth_mm=tooth_mm):
                estimated = tooth_mm
            case ConfirmingImage(set_mm=set_mm, tip_short_mm=tip_short_mm):
                in_canal = mm(um(set_mm) + um(tip_short_mm))
            case DirectSight(seen_mm=seen_mm):
                in_canal = seen_mm
            case ApexLocator():  # finds the canal's end, which may lie short of the tooth's
                pass
    return estimated if in_canal is None else in_canal


class Resorption(StrEnum):
    """What the image shows around the root's end; it decides the set-back."""

    NONE = "none"
    BONE = "bone"
    BONE_AND_ROOT = "bone_and_root"


class LengthState(StrEnum):
    MISSING = "missing"
    """No reading that counts."""
    ESTIMATED = "estimated"
    """Only estimates: good for exploring, not for shaping."""
    SETTLED = "settled"
    TO_SETTLE = "to_settle"
    """Readings differ by little: the supervisor settles it at the hold point."""
    UNSETTLED = "unsettled"
    """Readings disagree, or a further image is due: nothing that shapes may go in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadingResult:
    """What one reading says."""

    method: str
    working_length_mm: float | None
    counts: bool
    why: str
    """Why it counts, or why it does not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Length:
    """The working length of one canal and what it rests on."""

    state: LengthState
    working_length_mm: float | None
    """Before rounding."""
    stop_mm: float | None
    """Rounded down to half a millimetre."""
    estimate_mm: float | None
    """The estimated stop from the pre-operative image, for the first instrument."""
    rests_on: tuple[str, ...]
    """Methods the length comes from."""
    apart_mm: float | None
    """Largest difference between readings that should agree."""
    readings: tuple[ReadingResult, ...]
    what_to_do: str
    estimated: ImageInterval | None = None
    """Between which lengths the tooth was estimated to lie; None where no estimate has an interval."""
    estimate_within_mm: float | None = None
    """Measured and estimated, the tooth may lie so far apart without a question; None: as the row has it."""
    from_estimate_mm: float | None = None
    """How far the tooth as measured and as estimated lie apart; None where one of them is missing."""
