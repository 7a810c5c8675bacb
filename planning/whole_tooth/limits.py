"""How much one request may ask for, and how far a programme's own figures may lie from the published ones.

No real tooth comes near these; a slip of the decimal point, or a request made to wear the server out, does.
"""

from __future__ import annotations

from collections.abc import Mapping

from planning.contract.plan_input import PlanInput
from planning.foundation import tables
from planning.foundation.bounds import refuse_outside, within
from planning.foundation.counts import at_most, refuse_too_many
from planning.foundation.errors import ChoiceNotPossible, TooMuchWork
from planning.foundation.tables import Figure
from planning.instruments.iso_3630 import sizes


def refuse_too_much(plan_input: PlanInput) -> None:
    """Raises TooMuchWork or OutOfBounds, its path at what there is too much of."""
    refuse_too_many(plan_input)
    refuse_outside(plan_input.technique, ("technique",))
    if not within("samples").holds(plan_input.samples):
        raise within("samples").refusal(("samples",))
    passes = at_most("passes")
    for number, phase in enumerate(plan_input.technique.phases):
        for name in ("most_passes", "steps"):
            count = getattr(phase, name) or 0
            if count > passes.most:
                raise passes.refusal(count, ("technique", "phases", number, name))
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
