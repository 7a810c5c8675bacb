"""From readings to a working length, or to *unsettled*.

Readings are ranked and never averaged: an estimate and its check are not two measurements of one thing. The
highest rank present gives the length; what else was measured only tests it, an estimate too.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from planning.foundation.bounds import refuse_outside
from planning.foundation.errors import ReadingNotUsable
from planning.foundation.quantities import in_mm, mm, stop_um, um
from planning.foundation.tables import Figures
from planning.lengths.readings import (
    ApexLocator,
    ConfirmingImage,
    DirectSight,
    ImageInterval,
    Length,
    LengthState,
    PreOperativeImage,
    Ratio,
    Reading,
    ReadingResult,
    Resorption,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthContext:
    """What a length needs to know of its canal besides the readings."""

    canal: str
    reference_point: str
    setting: str
    """block | extracted | clinic."""
    resorption: Resorption = Resorption.NONE
    apex_mm: float | None = None


@dataclass(frozen=True, slots=True)
class _Said:
    """A reading worked out: its length in micrometres, or why it does not count."""

    reading: Reading
    length_um: int | None
    why: str
    image_again: bool = False
    less_um: int = 0
    """Of an estimate: what was taken off the tooth."""

    @property
    def counts(self) -> bool:
        return self.length_um is not None


def settle(readings: Sequence[Reading], about: LengthContext, figures: Figures) -> Length:
    """The working length of one canal.

    Raises OutOfBounds and ReadingNotUsable (paths start at the reading's index) for readings that cannot
    be right; readings that can be right but do not count are listed with the reason.
    """
    worked = [_work_out(number, reading, about, figures) for number, reading in enumerate(readings)]
    latest = _latest(worked)
    # Flaring straightens a bent canal and so shortens the way to its end: readings before it and after it are settled
    # apart, and only then compared.
    before = _measured([said_ for said_ in latest if not said_.reading.after_flaring], about, figures)
    after = _measured([said_ for said_ in latest if said_.reading.after_flaring], about, figures)
    apart_um = _from_estimate(before or after, latest, about, figures)
    outcome = _over_flaring(before, after, figures) or _estimated(latest, about, figures)
    return _length(_tested(outcome, apart_um, figures), worked, latest, apart_um, figures)


@dataclass(frozen=True, slots=True)
class _Outcome:
    state: LengthState
    length_um: int | None
    rests_on: tuple[str, ...]
    apart_um: int | None
    what_to_do: str


# --- one reading -----------------------------------------------------------------------------------------------


def _work_out(number: int, reading: Reading, about: LengthContext, figures: Figures) -> _Said:
    refuse_outside(reading, (number,))
    # Measured from another place on the crown the same canal has another length.
    if reading.reference_point != about.reference_point:
        why = f"measured from {reading.reference_point}; the canal's reference point is {about.reference_point}"
        return _Said(reading, None, why)
    match reading:
        case PreOperativeImage():
            _refuse_interval(number, reading.interval, reading.tooth_mm, about)
            less = _less(reading, reading.tooth_mm, about, figures)
            return _Said(
                reading,
                um(reading.tooth_mm) - less,
                f"an estimate, {in_mm(less)} mm less than the tooth on the image",
                less_um=less,
            )
        case Ratio():
            return _ratio(number, reading, about, figures)
        case ConfirmingImage():
            return _confirming(reading, about, figures)
        case ApexLocator():
            return _locator(reading, about, figures)
        case DirectSight():
            return _direct(number, reading, about, figures)


def _ratio(number: int, reading: Ratio, about: LengthContext, figures: Figures) -> _Said:
    """Tooth = instrument x tooth on the image / instrument on the image, all on one image."""
    if reading.instrument_on_image_mm < figures["ratio.least_on_image"]:
        reason = (
            f"{reading.instrument_on_image_mm} mm of instrument on the image is too short for a ratio. "
            "Use another image."
        )
        raise ReadingNotUsable(canal=about.canal, reason=reason, at=(number, "instrument_on_image_mm"))
    ratio = reading.instrument_on_image_mm / reading.instrument_mm
    if not figures["ratio.least"] <= ratio <= figures["ratio.most"]:
        reason = f"image over actual length is {ratio:.3f}: the image is distorted. Take another."
        raise ReadingNotUsable(canal=about.canal, reason=reason, at=(number, "instrument_on_image_mm"))
    tooth_mm = reading.tooth_mm
    _refuse_interval(number, reading.interval, tooth_mm, about)
    less = _less(reading, tooth_mm, about, figures)
    return _Said(
        reading,
        um(tooth_mm) - less,
        f"an estimate: tooth {in_mm(um(tooth_mm))} mm by ratio, less {in_mm(less)}",
        less_um=less,
    )


def _less(reading: Ratio | PreOperativeImage, tooth_mm: float, about: LengthContext, figures: Figures) -> int:
    """What is taken off the estimated tooth for its length [µm]: enough to stay above where the tooth may end by its
    interval.
    """
    set_back = _set_back(about, figures)
    # Never deeper than the length will be, where bone is gone around the end.
    usual = max(set_back, um(figures["allowance.image"])) if isinstance(reading, PreOperativeImage) else set_back
    return usual if reading.interval is None else max(usual, um(tooth_mm) - um(reading.interval.least_mm))


def _refuse_interval(number: int, interval: ImageInterval | None, tooth_mm: float, about: LengthContext) -> None:
    """Raises ReadingNotUsable for an interval that says nothing of the tooth."""
    if interval is None or tooth_mm / 2 <= interval.least_mm <= interval.most_mm <= tooth_mm * 2:
        return
    reason = f"{interval.least_mm:g} to {interval.most_mm:g} mm says nothing of a tooth of {tooth_mm:.1f} mm."
    raise ReadingNotUsable(canal=about.canal, reason=reason, at=(number, "interval"))


def _confirming(reading: ConfirmingImage, about: LengthContext, figures: Figures) -> _Said:
    # Below 0 where the tip has gone past the apex.
    tip = um(reading.tip_short_mm)
    if abs(tip) > um(figures["lengths.tip_too_far"]):
        return _Said(reading, None, f"tip {in_mm(abs(tip))} mm off: move the stop and take the image again", True)
    less = _set_back(about, figures)
    # From the reference point to the tip, on to the apex, and back by the set-back.
    length = um(reading.set_mm) + tip - less
    moved = abs(length - um(reading.set_mm))
    if tip < 0 or moved > um(figures["lengths.image_again_over"]):
        why = "the tip is past the apex" if tip < 0 else f"corrected by {in_mm(moved)} mm"
        return _Said(reading, length, f"{why}: take a further image at {in_mm(stop_um(length))} mm", True)
    return _Said(reading, length, f"set at {in_mm(um(reading.set_mm))}, tip {in_mm(tip)} short, less {in_mm(less)}")


def _locator(reading: ApexLocator, about: LengthContext, figures: Figures) -> _Said:
    apart = abs(um(reading.read_mm) - um(reading.repeat_mm))
    if not reading.stable:
        return _Said(reading, None, "the display did not hold still")
    if apart > um(figures["locator.repeat_within"]):
        return _Said(reading, None, f"the two readings lie {in_mm(apart)} mm apart: take it again")
    if about.apex_mm is not None and about.apex_mm > figures["locator.widest_foramen"]:
        return _Said(reading, None, "a locator is not reliable in a foramen this wide")
    # The shorter one: a stop that is set long lets the instrument past the canal's end.
    shorter = min(um(reading.read_mm), um(reading.repeat_mm))
    if reading.mark == "constriction":
        return _Said(reading, shorter, "at the constriction mark, the shorter of two readings")
    less = um(figures["locator.apex_mark_less"])
    return _Said(reading, shorter - less, f"at the apex mark, the shorter of two readings, less {in_mm(less)}")


def _direct(number: int, reading: DirectSight, about: LengthContext, figures: Figures) -> _Said:
    if about.setting == "clinic":
        reason = "the end of a canal cannot be seen in a patient. Use an image or a locator."
        raise ReadingNotUsable(canal=about.canal, reason=reason, at=(number, "method"))
    block = about.setting == "block"
    less = um(figures["set_back.block" if block else "set_back.seen_at_foramen"])
    return _Said(
        reading, um(reading.seen_mm) - less, f"seen at the {'end' if block else 'foramen'}, less {in_mm(less)}"
    )


def apex_beyond_mm(length: Length, readings: Sequence[Reading], about: LengthContext, figures: Figures) -> float:
    """How far the apex lies beyond the working length [mm]: as much as was taken off the tooth that it rests on."""
    for reading in reversed(readings):
        if reading.method in length.rests_on and isinstance(reading, Ratio | PreOperativeImage):
            return mm(_less(reading, reading.tooth_mm, about, figures))
    return mm(_beyond(length.rests_on, about, figures))


def _beyond(rests_on: Sequence[str], about: LengthContext, figures: Figures) -> int:
    """What lies between a measured length and the tooth's end [µm]; sight is of the foramen, or of a block's end."""
    if "direct_sight" not in rests_on:
        return _set_back(about, figures)
    return um(figures["set_back.block" if about.setting == "block" else "set_back.seen_at_foramen"])


def _set_back(about: LengthContext, figures: Figures) -> int:
    return um(figures[f"set_back.{about.resorption}"])


# --- several readings ------------------------------------------------------------------------------------------


def _latest(worked: Sequence[_Said]) -> list[_Said]:
    """The last reading of each method, before and after flaring: a later one replaces an earlier one."""
    last: dict[tuple[str, bool], _Said] = {}
    for said_ in worked:
        # One that asks for a further image is kept although it may not count: until that is taken nothing is settled.
        if said_.counts or said_.image_again:
            last[said_.reading.method, said_.reading.after_flaring] = said_
    return list(last.values())


def _measured(latest: Sequence[_Said], about: LengthContext, figures: Figures) -> _Outcome | None:
    """What the measurements say, estimates left out; None where nothing was measured."""
    measured = [s for s in latest if isinstance(s.reading, ConfirmingImage | ApexLocator | DirectSight)]
    lengths = [s.length_um for s in measured if s.length_um is not None]
    again = next((s.why for s in measured if s.image_again), "")
    if not lengths:
        return _Outcome(LengthState.UNSETTLED, None, (), None, again.capitalize() + ".") if again else None
    methods = tuple(s.reading.method for s in measured if s.counts)
    # While measurements differ the shortest is given, so that nothing goes past the end.
    shortest, apart = min(lengths), max(lengths) - min(lengths)
    if apart > um(figures["lengths.supervisor_within"]):
        do = f"Readings lie {in_mm(apart)} mm apart. Go no deeper than {in_mm(stop_um(shortest))}; measure again."
        return _Outcome(LengthState.UNSETTLED, shortest, methods, apart, do)
    if again:
        return _Outcome(LengthState.UNSETTLED, shortest, methods, apart, again[0].upper() + again[1:] + ".")
    if apart > um(figures["lengths.agree_within"]):
        do = f"Readings lie {in_mm(apart)} mm apart: the supervisor settles the length."
        return _Outcome(LengthState.TO_SETTLE, shortest, methods, apart, do)
    # Sight ranks above an image and a locator, which do not see the end itself.
    seen = [s for s in measured if isinstance(s.reading, DirectSight) and s.length_um is not None]
    if seen:
        return _Outcome(LengthState.SETTLED, seen[0].length_um, ("direct_sight",), apart, "")
    if about.setting == "clinic" and methods == ("apex_locator",):
        return _Outcome(LengthState.ESTIMATED, shortest, methods, None, "A locator alone: take a confirming image.")
    return _Outcome(LengthState.SETTLED, shortest, methods, apart, "")


def _over_flaring(before: _Outcome | None, after: _Outcome | None, figures: Figures) -> _Outcome | None:
    """A length taken again after flaring replaces the earlier one, within the shift that flaring explains."""
    if before is None or after is None or before.length_um is None or after.length_um is None:
        return after or before
    # Shorter is what flaring explains. Longer it does not explain at all.
    shift = before.length_um - after.length_um
    if 0 <= shift <= um(figures["lengths.flaring_shift"]):
        return after
    shortest = min(before.length_um, after.length_um)
    how = f"{in_mm(shift)} mm shorter" if shift > 0 else f"{in_mm(-shift)} mm longer"
    do = f"After flaring the canal reads {how}. Go no deeper than {in_mm(stop_um(shortest))}; take an image."
    return _Outcome(LengthState.UNSETTLED, shortest, after.rests_on, abs(shift), do)


def _from_estimate(
    measured: _Outcome | None, latest: Sequence[_Said], about: LengthContext, figures: Figures
) -> int | None:
    """How far the tooth as it was measured and as it was estimated lie apart [µm]; None where one of them is missing.

    Both as tooth lengths: what is taken off for the working length differs from one method to the next.
    """
    estimates = [s for s in latest if isinstance(s.reading, Ratio | PreOperativeImage) and s.length_um is not None]
    if measured is None or measured.length_um is None or not estimates:
        return None
    tooth = measured.length_um + _beyond(measured.rests_on, about, figures)
    last = estimates[-1]
    return abs(tooth - ((last.length_um or 0) + last.less_um))


def _tested(outcome: _Outcome, apart_um: int | None, figures: Figures) -> _Outcome:
    """A measurement that lies too far from its estimate may be of another tooth, canal or point: nothing is settled."""
    measured = outcome.state in (LengthState.SETTLED, LengthState.TO_SETTLE)
    if not measured or apart_um is None or apart_um <= um(figures["lengths.estimate_too_far"]):
        return outcome
    do = (
        f"Measured and estimated, the tooth differs by {in_mm(apart_um)} mm: check which tooth, which canal, which "
        "reference point, and measure again."
    )
    return replace(outcome, state=LengthState.UNSETTLED, apart_um=apart_um, what_to_do=do)


def _estimated(latest: Sequence[_Said], about: LengthContext, figures: Figures) -> _Outcome:
    """What the estimates say where nothing was measured: the best of them, or that there is no length yet."""
    # A ratio brings its own scale: an instrument of known length on the same image.
    by_rank = (Ratio, PreOperativeImage)
    for kind in by_rank:
        for said_ in reversed(latest):
            if isinstance(said_.reading, kind):
                do = "An estimate: confirm it with an instrument at the estimated length."
                return _Outcome(LengthState.ESTIMATED, said_.length_um, (said_.reading.method,), None, do)
    return _Outcome(LengthState.MISSING, None, (), None, f"Measure {about.canal}: no reading counts yet.")


def _length(
    outcome: _Outcome,
    worked: Sequence[_Said],
    latest: Sequence[_Said],
    from_estimate_um: int | None,
    figures: Figures,
) -> Length:
    images = [s.length_um for s in latest if isinstance(s.reading, PreOperativeImage) and s.length_um is not None]
    estimated = _interval(latest)
    length = outcome.length_um
    return Length(
        state=outcome.state,
        working_length_mm=None if length is None else mm(length),
        stop_mm=None if length is None else mm(stop_um(length)),
        estimate_mm=mm(stop_um(images[-1])) if images else None,
        rests_on=outcome.rests_on,
        apart_mm=None if outcome.apart_um is None else mm(outcome.apart_um),
        estimated=estimated,
        estimate_within_mm=None if estimated is None else _within(estimated, figures),
        from_estimate_mm=None if from_estimate_um is None else mm(from_estimate_um),
        readings=tuple(
            ReadingResult(
                method=s.reading.method,
                working_length_mm=None if s.length_um is None else mm(s.length_um),
                counts=s.reading.method in outcome.rests_on and s in latest,
                why=s.why if s in latest or not s.counts else f"replaced by a later reading ({s.why})",
            )
            for s in worked
        ),
        what_to_do=outcome.what_to_do,
    )


def _interval(latest: Sequence[_Said]) -> ImageInterval | None:
    """The interval of the last estimate; None where it has none."""
    estimates = [s.reading for s in latest if isinstance(s.reading, Ratio | PreOperativeImage) and s.counts]
    last = estimates[-1] if estimates else None
    return last.interval if isinstance(last, Ratio | PreOperativeImage) else None


def _within(estimated: ImageInterval, figures: Figures) -> float:
    """How far a measurement may lie from the estimate: what the estimate may be off and what two measurements may
    differ by, taken together.
    """
    # Errors that know nothing of each other add by their squares.
    half = (estimated.most_mm - estimated.least_mm) / 2
    return round(math.hypot(half, figures["lengths.agree_within"]), 2)
