"""How deep an irrigation needle may go: a ceiling, and how much of it is open now."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise

from planning.canal.profile import Line
from planning.contract.plan_input import Irrigant, Needle
from planning.contract.plan_value import IrrigantTotal
from planning.foundation import tables
from planning.foundation.errors import ChoiceNotPossible
from planning.foundation.quantities import UM_PER_MM, in_mm, stop_um, um
from planning.foundation.tables import Figure, Figures
from planning.run_sheet.graph import Step


@dataclass(frozen=True, slots=True, kw_only=True)
class NeedleLimits:
    """What limits one needle in one canal, in whole micrometres from the reference point."""

    orifice_um: int
    ceiling_um: int
    """Never deeper, however wide the canal."""
    outside_um: int
    """Largest outside diameter the gauge may have: planning never uses the nominal one."""
    clearance_um: int

    def now_um(self, shape: Line) -> int:
        """Deepest setting [µm] in a canal that is known to be this wide: short of where the needle would bind.

        Where the needle is free nowhere it is the orifice, so that the chamber is rinsed, or the ceiling where that
        lies higher. The setting never falls while the canal gets wider.
        """
        return min(self.ceiling_um, max(stop_um(self.orifice_um), stop_um(self.free_um(shape) - self.clearance_um)))

    def free_um(self, shape: Line) -> int:
        """How deep [µm] the needle is free all the way from the orifice; 0 where it is free nowhere."""
        return um(free_mm(shape, self.outside_um / UM_PER_MM) or 0.0)

    def chamber_alone(self, now_um: int) -> bool:
        """Whether the needle, with this as its deepest setting, is free nowhere below the orifice."""
        return self.orifice_um < self.ceiling_um and now_um <= self.orifice_um


def free_mm(shape: Line, outside_mm: float) -> float | None:
    """Depth [mm] to which something this wide is free all the way from the orifice; None where it is free nowhere."""
    if not shape or shape[0][1] < outside_mm:
        return None
    for (a, wide_a), (b, wide_b) in pairwise(shape):
        if wide_b < outside_mm:
            return a if a == b else a + (b - a) * (wide_a - outside_mm) / (wide_a - wide_b)
    return shape[-1][0]


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


def limits(needle: Needle, *, orifice_um: int, end_um: int, most_um: int | None, figures: Figures) -> NeedleLimits:
    """What limits `needle` in a canal whose shape ends at `end_um`; `most_um` where it may go no deeper in any case."""
    ceiling_um = max(0, stop_um(end_um - um(figures[f"needle.short_{needle.tip}"])))
    return NeedleLimits(
        orifice_um=orifice_um,
        ceiling_um=ceiling_um if most_um is None else min(ceiling_um, most_um),
        outside_um=round(outside(needle, figures).value * UM_PER_MM),
        clearance_um=um(figures["needle.clearance"]),
    )


def chamber_says(of: NeedleLimits, shape: Line) -> str:
    """What to do where the needle is free nowhere: rinse the chamber, or take the next thinner gauge that is free."""
    # A higher gauge is a thinner needle, so the first that is free is the next thinner one.
    for row in sorted(tables.rows("needles"), key=lambda row: int(row["gauge"])):
        thinner_um = round(float(row["most_mm"]) * UM_PER_MM)
        thinner = replace(of, outside_um=thinner_um)
        if thinner_um < of.outside_um and not thinner.chamber_alone(now_um := thinner.now_um(shape)):
            return (
                "This needle is free nowhere in the canal yet: rinse the chamber, or take "
                f"{row['gauge']} G, to {in_mm(now_um)} mm at most."
            )
    return "The needle is free nowhere in the canal yet: rinse the chamber."


def totals(steps: Iterable[Step]) -> tuple[IrrigantTotal, ...]:
    """Volume of each irrigant over a walk, in the order in which they are first used."""
    volumes_ml: dict[str, float] = {}
    for step in steps:
        if step.irrigant is not None and step.volume_ml is not None:
            volumes_ml[step.irrigant] = volumes_ml.get(step.irrigant, 0.0) + step.volume_ml
    return tuple(IrrigantTotal(irrigant=name, volume_ml=round(volume, 2)) for name, volume in volumes_ml.items())


def rinse_says(irrigant: str, figures: Figures) -> str:
    """The sentence for a final rinse of one irrigant: what to heed."""
    slowly = (
        f"at most {figures['rinse.most_ml_per_min']:g} mL a minute from its own labelled syringe, the needle loose."
    )
    if irrigant != Irrigant.EDTA:
        return f"Rinse: {slowly}"
    about, most = (figures[f"rinse.edta_{bound}_min"] for bound in ("about", "most"))
    return (
        f"EDTA for about {about:g} minute and never over {most:g}, then flush it out before the next irrigant; {slowly}"
    )
