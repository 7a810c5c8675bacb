"""How deep an irrigation needle may go: a ceiling, and how much of it is open now."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from planning import tables
from planning.errors import ChoiceNotPossible
from planning.graph import Do
from planning.instruments import Instrument
from planning.plan_input import Irrigant, Needle
from planning.plan_value import IrrigantTotal
from planning.quantities import UM_PER_HUNDREDTH_MM, UM_PER_MM, stop_um, um
from planning.tables import Figure, Figures


@dataclass(frozen=True, slots=True, kw_only=True)
class NeedleLimits:
    """What limits one needle in one canal, in whole micrometres."""

    end_um: int
    outside_um: int
    """Largest outside diameter the gauge may have: planning never uses the nominal one."""
    short_um: int
    clearance_um: int

    @property
    def ceiling_um(self) -> int:
        return max(0, stop_um(self.end_um - self.short_um))

    def now_um(self, shaped: Instrument | None, before_um: int) -> int:
        """Deepest setting [µm] after `shaped` has stood at the canal's end; `before_um` where nothing has yet.

        The needle binds where the shape is as wide as it: (outside - tip) / taper short of the end.
        """
        if shaped is None:
            return min(self.ceiling_um, before_um)
        lacking = self.outside_um - shaped.size * UM_PER_HUNDREDTH_MM
        if lacking > 0 and shaped.taper == 0:
            return min(self.ceiling_um, before_um)
        bind = max(0, lacking * UM_PER_MM // (shaped.taper * UM_PER_HUNDREDTH_MM)) if lacking > 0 else 0
        return max(0, min(self.ceiling_um, stop_um(self.end_um - bind - self.clearance_um)))


def outside_um(needle: Needle) -> int:
    """Largest outside diameter [µm] of the needle's gauge (ISO 9626). Raises ChoiceNotPossible."""
    return round(outside(needle, Figures()).value * UM_PER_MM)


def outside(needle: Needle, figures: Figures) -> Figure:
    """The row of the gauge's largest outside diameter [mm]. Raises ChoiceNotPossible."""
    for row in tables.rows("needles"):
        if int(row["gauge"]) == needle.gauge:
            return figures.cell("needles", row, "most_mm", row["gauge"])
    known = ", ".join(row["gauge"] for row in tables.rows("needles"))
    reason = f"no needle of gauge {needle.gauge} is known. Choose one of {known}."
    raise ChoiceNotPossible(canal="Needle", reason=reason, at=("choices", "needle", "gauge"))


def limits(needle: Needle, end_um: int, figures: Figures) -> NeedleLimits:
    """What limits `needle` in a canal whose shape ends at `end_um`."""
    return NeedleLimits(
        end_um=end_um,
        outside_um=round(outside(needle, figures).value * UM_PER_MM),
        short_um=um(figures[f"needle.short_{needle.tip}"]),
        clearance_um=um(figures["needle.clearance"]),
    )


def totals(steps: Iterable[Do]) -> tuple[IrrigantTotal, ...]:
    """Volume of each irrigant over a walk, in the order in which they are first used."""
    found: dict[str, float] = {}
    for step in steps:
        if step.irrigant is not None and step.volume_ml is not None:
            found[step.irrigant] = found.get(step.irrigant, 0.0) + step.volume_ml
    return tuple(IrrigantTotal(irrigant=name, volume_ml=round(volume, 2)) for name, volume in found.items())


def rinse_says(irrigant: str, figures: Figures) -> str:
    """What to heed in a final rinse of one irrigant."""
    slowly = (
        f"at most {figures['rinse.most_ml_per_min']:g} mL a minute from its own labelled syringe, the needle loose."
    )
    if irrigant != Irrigant.EDTA:
        return f"Rinse: {slowly}"
    about, most = (figures[f"rinse.edta_{bound}_min"] for bound in ("about", "most"))
    return (
        f"EDTA for about {about:g} minute and never over {most:g}, then flush it out before the next irrigant; {slowly}"
    )
