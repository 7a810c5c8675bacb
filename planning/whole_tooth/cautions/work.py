"""What a plan warns of once a canal has been planned: its shape, its bend, its needle, the instruments' uses."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from planning.canal.canal import Canal
from planning.contract.cautions import caution
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import CanalPlan, Caution
from planning.foundation.tables import Figures
from planning.whole_tooth.cautions.felt import felt_cautions
from planning.work.canal_plan import PlannedCanal


def work_cautions(canal: Canal, planned: PlannedCanal, figures: Figures) -> list[Caution]:
    """The cautions that concern one canal once it is planned."""
    plan = planned.plan
    return [
        *_taper(canal, plan, figures),
        *_strain(plan, figures),
        *_wall(plan, figures),
        *_final_size(canal, planned),
        *_needle(canal, plan),
        *felt_cautions(canal, planned, figures),
    ]


def _taper(canal: Canal, plan: CanalPlan, figures: Figures) -> Iterator[Caution]:
    angle, bend = canal.input.curvature_deg, figures.row("final.moderate_deg")
    most = figures.count("final.curve_taper")
    if angle is not None and angle >= bend.value and plan.final_taper > most:
        yield caution("curve-taper", canal=plan.canal, value=angle, limit=bend, taper=plan.final_taper, most=most)


def _strain(plan: CanalPlan, figures: Figures) -> Iterator[Caution]:
    """One caution for all instruments of the high class, with the worst of them. None where the curve is not this
    canal's own: nearly every bent canal would have it."""
    high = [each for each in plan.strain if each.strain_class == "high" and not each.taken]
    if high:
        names = ", ".join(each.instrument for each in high)
        worst_pct = max(each.strain_pct for each in high)
        yield caution(
            "strain-high", canal=plan.canal, value=worst_pct, limit=figures.row("strain.high_pct"), instruments=names
        )


def _wall(plan: CanalPlan, figures: Figures) -> Iterator[Caution]:
    if plan.wall is None:
        return
    stop, warn, left_mm = figures.row("wall.stop"), figures.row("wall.caution"), plan.wall.worst_mm
    if left_mm < stop.value:
        basis = "measured on this tooth" if plan.wall.measured else "from the published cautious wall"
        yield caution("wall-too-thin", canal=plan.canal, value=left_mm, limit=stop, basis=basis)
    elif left_mm < warn.value:
        # By what was published nearly every such canal has a thin wall: no caution of this tooth.
        code = "wall-thin" if plan.wall.measured else "wall-thin-here"
        yield caution(code, canal=plan.canal, value=left_mm, limit=warn)


def _final_size(canal: Canal, planned: PlannedCanal) -> Iterator[Caution]:
    """A size that does nothing, and one that no cone closes. Where a canal's widths are not known, nothing is said."""
    plan, comes_to = planned.plan, planned.outcome
    if comes_to is None:
        return
    size = comes_to.final.size
    if comes_to.cuts is False:
        yield caution("size-cuts-nothing", canal=plan.canal, value=size, unit="ISO size")
    cones = any(item.kind == "cone" for item in canal.plan_input.kit.filling)
    unclosed = plan.obturation is not None and plan.obturation.master_cone is None
    if cones and (comes_to.wider or unclosed):
        why = ": the end is expected to be wider" if comes_to.wider else ""
        yield caution("cone-none", canal=plan.canal, value=size, unit="ISO size", why=why)


def _needle(canal: Canal, plan: CanalPlan) -> Iterator[Caution]:
    """The needle is too wide where even the finished shape keeps it above its ceiling."""
    # Without a final size that can be made there is no finished shape.
    if plan.needle is None or not plan.needle.now or canal.worked_size is None:
        return
    deepest_mm, ceiling_mm = max(now.at_most_mm for now in plan.needle.now), plan.needle.ceiling_mm
    if deepest_mm < ceiling_mm:
        gauge = f"{canal.plan_input.choices.needle.gauge} G"
        yield caution("needle-wide", canal=plan.canal, value=deepest_mm, limit=ceiling_mm, unit="mm", needle=gauge)


def worn_cautions(plan_input: PlanInput, planned: Sequence[PlannedCanal]) -> list[Caution]:
    """Instruments that would be used in more canals than they are allowed."""
    canals: dict[str, set[str]] = {}
    for each in planned:
        for node in each.steps:
            if node.instrument:
                # One use is one canal, however often the instrument enters it.
                canals.setdefault(node.instrument, set()).add(each.plan.canal)
    return [
        caution(
            "instrument-worn",
            value=instrument.uses + len(canals[instrument.key]),
            limit=instrument.most_uses,
            unit="canals",
            instrument=instrument.name,
            uses=instrument.uses,
            planned=len(canals[instrument.key]),
        )
        for instrument in plan_input.kit.instruments
        if instrument.most_uses is not None
        and instrument.key in canals
        and instrument.uses + len(canals[instrument.key]) > instrument.most_uses
    ]
