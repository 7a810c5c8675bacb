"""Why a canal is as long as it is."""

from __future__ import annotations

from collections.abc import Iterator

from planning.contract.rationale import Rationale, Rounding
from planning.foundation.quantities import mm, stop_um, um
from planning.foundation.tables import Figure
from planning.lengths.readings import ApexLocator, ConfirmingImage, DirectSight, PreOperativeImage, Ratio, Reading
from planning.techniques.technique import Setting
from planning.whole_tooth.rationales.about import Entry, RationaleContext, rationale
from planning.whole_tooth.rationales.terms import Term, comes_to, known, least, no_more
from planning.whole_tooth.rationales.terms import length as length_of


def length_rationales(about: RationaleContext) -> Iterator[Rationale]:
    length = about.plan.length
    counted = [
        reading for reading, result in zip(about.canal.input.readings, length.readings, strict=True) if result.counts
    ]
    inputs = tuple(entry for reading in counted for entry in _entered(reading))
    rows = tuple(row for reading in counted for row in _reading_rows(about, reading))
    giving = _giving(about)
    if length.working_length_mm is not None and length.stop_mm is not None and giving is not None:
        rule = (
            "Readings are ranked, never averaged: the highest rank there is gives the length, of two of one rank the "
            "shorter, less what its method asks for."
        )
        whole = comes_to(_term_of(about, giving, whole=True), length.working_length_mm, "mm", Rounding.HUNDREDTH)
        yield rationale("length.working_length_mm", rule, inputs, rows, whole)
        rule = "The working length rounded down to half a millimetre: a stop set long lets the instrument past the end."
        stop = comes_to(length_term(about), length.stop_mm, "mm", Rounding.HALF_MM_DOWN)
        working = ("working length", length.working_length_mm, "mm")
        yield rationale("length.stop_mm", rule, (working,), rows, stop)
    yield from _apart(about)
    if length.estimate_mm is not None:
        yield _estimate(about, length.estimate_mm)


def length_term(about: RationaleContext) -> Term:
    """The working length as its reading gives it; it must have one."""
    giving = _giving(about)
    length_mm = about.plan.length.working_length_mm or 0.0
    return length_of("working length", length_mm) if giving is None else _term_of(about, giving)


def _giving(about: RationaleContext) -> Reading | None:
    """The reading whose length the working length is; of two that say the same, the last that counts."""
    length = about.plan.length
    pairs = zip(about.canal.input.readings, length.readings, strict=True)
    same = [
        (result.counts, reading)
        for reading, result in pairs
        if result.working_length_mm is not None and result.working_length_mm == length.working_length_mm
    ]
    counts = [reading for counts, reading in same if counts]
    return next(iter(reversed(counts or [reading for _, reading in same])), None)


def _term_of(about: RationaleContext, reading: Reading, *, whole: bool = False) -> Term:
    """The working length by one reading; `whole`: a ratio written out, which is rounded before it is gone on with."""
    set_back = about.figures.row(f"set_back.{about.canal.input.resorption}")
    match reading:
        case PreOperativeImage(tooth_mm=tooth):
            return _estimated(reading, length_of("tooth on the image", tooth), _known("allowance", _allowance(about)))
        case Ratio():
            by_ratio = _ratio(reading) if whole else length_of("tooth by the ratio", reading.tooth_mm)
            return _estimated(reading, by_ratio, _known("set-back", set_back))
        case ConfirmingImage(set_mm=set_, tip_short_mm=short):
            tip = length_of("its tip short of the apex", short)
            return length_of("instrument set at", set_) + tip - _known("set-back", set_back)
        case ApexLocator(read_mm=first, repeat_mm=second, mark=mark):
            shorter = least(length_of("locator", first), length_of("locator again", second))
            less = about.figures.row("locator.apex_mark_less")
            return shorter if mark == "constriction" else shorter - _known("less at the apex mark", less)
        case DirectSight(seen_mm=seen):
            return length_of("seen at the end", seen) - _known("set-back", _reading_rows(about, reading)[0])


def _ratio(reading: Ratio) -> Term:
    shown = known("instrument on the image", reading.instrument_on_image_mm, "mm")
    scale = shown / known("instrument", reading.instrument_mm, "mm")
    return known("tooth on the image", reading.tooth_on_image_mm, "mm") / scale


def _estimated(reading: PreOperativeImage | Ratio, tooth: Term, less: Term) -> Term:
    """An estimate goes no deeper than the tooth is long at least, by its interval."""
    if reading.interval is None:
        return tooth - less
    return no_more(tooth - less, length_of("at least", reading.interval.least_mm))


def _known(name: str, row: Figure) -> Term:
    return known(name, row.value, row.unit)


def _apart(about: RationaleContext) -> Iterator[Rationale]:
    """How far apart readings are that should agree; what an estimate or an earlier length says is another matter."""
    length = about.plan.length
    lengths_mm = [each.working_length_mm for each in length.readings if each.counts and each.working_length_mm]
    if length.apart_mm is None or len(lengths_mm) < 2:
        return
    apart = length_of("longest", max(lengths_mm)) - length_of("shortest", min(lengths_mm))
    if um(apart.value) == um(length.apart_mm):
        within = about.figures.row("lengths.agree_within")
        rule = "The longest of the readings that count less the shortest."
        calculation = comes_to(apart, length.apart_mm, "mm", Rounding.HUNDREDTH)
        yield rationale("length.apart_mm", rule, (("settled up to", within.value, "mm"),), (within,), calculation)


def _estimate(about: RationaleContext, estimate_mm: float) -> Rationale:
    pairs = zip(about.canal.input.readings, about.plan.length.readings, strict=True)
    images = [
        reading
        for reading, result in pairs
        if isinstance(reading, PreOperativeImage)
        if result.working_length_mm is not None and mm(stop_um(um(result.working_length_mm))) == estimate_mm
    ]
    allowance = _allowance(about)
    rule = (
        "The tooth's length on the pre-operative image, less the allowance, and no longer than the tooth may be at "
        "least by its interval, rounded down to half a millimetre."
    )
    entered = (("tooth on the image", images[-1].tooth_mm, "mm"), *_sure(images[-1]))
    calculation = comes_to(_term_of(about, images[-1]), estimate_mm, "mm", Rounding.HALF_MM_DOWN)
    less = ("allowance", allowance.value, "mm")
    return rationale("length.estimate_mm", rule, (*entered, less), (allowance,), calculation)


def _entered(reading: Reading) -> tuple[Entry, ...]:
    match reading:
        case PreOperativeImage(tooth_mm=tooth):
            return (("tooth on the image", tooth, "mm"), *_sure(reading))
        case Ratio(instrument_mm=own, instrument_on_image_mm=shown, tooth_on_image_mm=tooth):
            return (
                ("instrument", own, "mm"),
                ("instrument on the image", shown, "mm"),
                ("tooth on the image", tooth, "mm"),
                *_sure(reading),
            )
        case ConfirmingImage(set_mm=set_, tip_short_mm=short):
            return (("instrument set at", set_, "mm"), ("its tip short of the apex", short, "mm"), *_sure(reading))
        case ApexLocator(read_mm=first, repeat_mm=second):
            return (("locator", first, "mm"), ("locator again", second, "mm"))
        case DirectSight(seen_mm=seen):
            return (("seen at the end", seen, "mm"),)


def _sure(reading: PreOperativeImage | Ratio | ConfirmingImage) -> tuple[Entry, ...]:
    """The interval that the length lies in, where it was marked on an image."""
    if reading.interval is None:
        return ()
    return (("at least", reading.interval.least_mm, "mm"), ("at most", reading.interval.most_mm, "mm"))


def _reading_rows(about: RationaleContext, reading: Reading) -> tuple[Figure, ...]:
    match reading:
        case PreOperativeImage():
            return (_allowance(about),)
        case ConfirmingImage() | Ratio():
            return (about.figures.row(f"set_back.{about.canal.input.resorption}"),)
        case ApexLocator(mark="constriction"):
            return (about.figures.row("locator.repeat_within"), *_wide(about))
        case ApexLocator():
            less = about.figures.row("locator.apex_mark_less")
            return (less, about.figures.row("locator.repeat_within"), *_wide(about))
        case DirectSight():
            block = about.plan_input.setting is Setting.BLOCK
            return (about.figures.row("set_back.block" if block else "set_back.seen_at_foramen"),)


def _allowance(about: RationaleContext) -> Figure:
    """Taken off a pre-operative image: the set-back where that is larger."""
    rows = (about.figures.row("allowance.image"), about.figures.row(f"set_back.{about.canal.input.resorption}"))
    return max(rows, key=lambda row: row.value)


def _wide(about: RationaleContext) -> tuple[Figure, ...]:
    """The figure that the foramen's width is compared with, where a width was charted."""
    return () if about.canal.input.apex_mm is None else (about.figures.row("locator.widest_foramen"),)
