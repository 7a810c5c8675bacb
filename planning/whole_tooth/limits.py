"""How much one request may ask for, and how far a programme's own figures may lie from the published ones.

No real tooth comes near these; a slip of the decimal point, or a request made to wear the server out, does.
"""

from __future__ import annotations

from collections.abc import Mapping

from planning.contract.plan_input import PlanInput
from planning.depth.samples import MOST_SAMPLES
from planning.foundation import tables
from planning.foundation.bounds import within
from planning.foundation.errors import ChoiceNotPossible, TooMuchWork
from planning.foundation.tables import Figure
from planning.instruments.iso_3630 import sizes
from planning.techniques.rules import MOST_PASSES, MOST_PHASES

MOST_CANALS = 8  # more than any tooth has
MOST_INSTRUMENTS = 120  # a well-filled kit has a third of it
MOST_READINGS = 60  # of one canal: each taken again a dozen times
MOST_NEEDLES = 20  # as many as there are gauges and tips to choose from
MOST_THRESHOLDS = 200  # about as many as there are figures to replace
MOST_WIDTHS = 40  # a reading every half millimetre of the longest canal
MOST_FELT = 400  # of one canal: every step of the longest order of work
MOST_DIAMETERS = 40  # of one instrument of variable taper


def refuse_too_much(plan_input: PlanInput) -> None:
    """Raises TooMuchWork, its path at what there is too much of."""
    counted: tuple[tuple[str, int, int, tuple[str | int, ...]], ...] = (
        ("canals", len(plan_input.canals), MOST_CANALS, ("canals",)),
        ("roots", len(plan_input.roots), MOST_CANALS, ("roots",)),
        ("choices of canals", len(plan_input.choices.canals), MOST_CANALS, ("choices", "canals")),
        ("instruments", len(plan_input.kit.instruments), MOST_INSTRUMENTS, ("kit", "instruments")),
        ("needles", len(plan_input.kit.needles), MOST_NEEDLES, ("kit", "needles")),
        ("irrigants", len(plan_input.choices.final_rinse), MOST_PASSES, ("choices", "final_rinse")),
        ("phases", len(plan_input.technique.phases), MOST_PHASES, ("technique", "phases")),
        ("thresholds", len(plan_input.thresholds), MOST_THRESHOLDS, ("thresholds",)),
        ("cones, pluggers and spreaders", len(plan_input.kit.filling), MOST_INSTRUMENTS, ("kit", "filling")),
        ("factors", len(plan_input.factors), MOST_INSTRUMENTS, ("factors",)),
        ("overrides", len(plan_input.overrides), MOST_THRESHOLDS, ("overrides",)),
        ("samples", plan_input.samples, MOST_SAMPLES, ("samples",)),
        *(
            ("readings", len(canal.readings), MOST_READINGS, ("canals", number, "readings"))
            for number, canal in enumerate(plan_input.canals)
        ),
        *(
            (what, len(getattr(canal, what)), most, ("canals", number, what))
            for number, canal in enumerate(plan_input.canals)
            for what, most in (("widths", MOST_WIDTHS), ("felt", MOST_FELT))
        ),
        *(
            ("insertions", len(canal.progress.made), MOST_FELT, ("canals", number, "progress", "made"))
            for number, canal in enumerate(plan_input.canals)
            if canal.progress is not None
        ),
        *(
            ("diameters", len(instrument.diameters), MOST_DIAMETERS, ("kit", "instruments", number, "diameters"))
            for number, instrument in enumerate(plan_input.kit.instruments)
        ),
        *(
            (name, getattr(phase, field) or 0, MOST_PASSES, ("technique", "phases", number, field))
            for number, phase in enumerate(plan_input.technique.phases)
            for name, field in (("passes", "most_passes"), ("steps", "steps"))
        ),
    )
    for what, count, most, at in counted:
        if count > most:
            raise TooMuchWork(reason=f"{count} {what} are more than the {most} that one request may have.", at=at)
    _refuse_too_many_pairs(len(plan_input.canals), len(plan_input.kit.instruments))


def _refuse_too_many_pairs(canals: int, instruments: int) -> None:
    """Raises TooMuchWork where two numbers, each within its bound, make too much work together."""
    most = within("instruments_by_canals").most
    if canals * instruments > most:
        reason = (
            f"{instruments} instruments in {canals} canals are more than one request may have: at most {most:g} when "
            "the one number is multiplied by the other. Leave out instruments that no canal needs."
        )
        raise TooMuchWork(reason=reason, at=("kit", "instruments"))


FARTHEST = 3  # times larger or smaller than the published figure: less than a slip of the decimal point
MOST_FOR_NOTHING = 1.0  # in place of a published 0, a set-back of none for instance
WHOLE_UNITS = frozenset({"size", "sizes", "times", "factors"})


def refuse_thresholds(thresholds: Mapping[str, float]) -> None:
    """Raises ChoiceNotPossible, its path at the first figure that does not exist or lies too far out."""
    published = tables.published()
    for key, value in thresholds.items():
        wrong = _wrong(published[key], value) if key in published else f"'{key}' is no figure of the data tables."
        if wrong:
            raise ChoiceNotPossible(canal="Thresholds", reason=wrong, at=("thresholds", key))


def limits(figure: Figure) -> tuple[float, float]:
    """Least and greatest value that a programme may set in place of a published one."""
    return figure.value / FARTHEST, figure.value * FARTHEST if figure.value else MOST_FOR_NOTHING


def _wrong(figure: Figure, value: float) -> str:
    least, most = limits(figure)
    if not least <= value <= most:
        return f"{figure.key} must lie between {least:g} and {most:g} {figure.unit}."
    if figure.unit in WHOLE_UNITS and (value < 1 or not float(value).is_integer()):
        return f"{figure.key} must be a whole number above 0."
    if figure.unit == "share" and value >= 1:
        return f"{figure.key} must be below 1."
    if figure.unit == "size" and int(value) not in sizes():
        return f"{figure.key} must be an ISO size."
    return ""
