"""Why a canal is as long as it is."""

from __future__ import annotations

from collections.abc import Iterator

from planning.contract.plan_value import Rationale
from planning.foundation.tables import Figure
from planning.lengths.readings import ApexLocator, ConfirmingImage, DirectSight, PreOperativeImage, Ratio, Reading
from planning.techniques.technique import Setting
from planning.whole_tooth.rationales.about import Entry, RationaleContext, rationale


def length_rationales(about: RationaleContext) -> Iterator[Rationale]:
    length = about.plan.length
    counted = [
        reading for reading, result in zip(about.canal.input.readings, length.readings, strict=True) if result.counts
    ]
    inputs = tuple(entry for reading in counted for entry in _entered(reading))
    rows = tuple(row for reading in counted for row in _reading_rows(about, reading))
    if length.working_length_mm is not None:
        rule = (
            "Readings are ranked, never averaged: the highest rank there is gives the length, of two of one rank the "
            "shorter, less what its method asks for."
        )
        yield rationale("length.working_length_mm", rule, inputs, rows)
        rule = "The working length rounded down to half a millimetre: a stop set long lets the instrument past the end."
        yield rationale("length.stop_mm", rule, (("working length", length.working_length_mm, "mm"),), rows)
    if length.estimate_mm is not None:
        last = [each for each in about.canal.input.readings if isinstance(each, PreOperativeImage)][-1]
        rule = (
            "The tooth's length on the pre-operative image, less the allowance, and no longer than the tooth may be at "
            "least by its interval, rounded down to half a millimetre."
        )
        allowance = _allowance(about)
        entered = (("tooth on the image", last.tooth_mm, "mm"), *_sure(last), ("allowance", allowance.value, "mm"))
        yield rationale("length.estimate_mm", rule, entered, (allowance,))


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
