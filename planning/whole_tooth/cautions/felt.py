"""What a plan warns of from the depths that were felt at the steps of one canal."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from planning.canal.canal import Canal
from planning.contract.cautions import caution
from planning.contract.plan_value import CanalPlan, Caution
from planning.foundation.quantities import mm, um
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument
from planning.run_sheet.graph import Action, Step
from planning.techniques.technique import PhaseKind
from planning.work.canal_plan import PlannedCanal


@dataclass(frozen=True, slots=True)
class _Record:
    """A depth that was felt, at the step it was felt at."""

    node: Step
    depth_um: int
    instrument: Instrument | None
    stop_um: int | None
    """None where the step has none."""


def felt_cautions(canal: Canal, planned: PlannedCanal, figures: Figures) -> list[Caution]:
    """The cautions from the recorded depths of one canal, in the order of work; of each kind the last."""
    records = list(_records(canal, planned))
    rules = (
        _past(planned.plan, records),
        _needle(canal, planned.plan, records),
        _patency(planned.plan, records, figures),
        _gain(canal, records, figures),
        _against_band(planned.plan, records),
    )
    return list({caution.code: caution for rule in rules for caution in rule}.values())


def _records(canal: Canal, planned: PlannedCanal) -> Iterator[_Record]:
    """The depths felt at steps that this plan has; one of another plan's step says nothing here."""
    kit = {tool.key: tool for tool in canal.plan_input.kit.instruments}
    for felt in canal.input.felt:
        node = planned.tabled.nodes.get(felt.node)
        if isinstance(node, Step):
            instrument = kit.get(node.instrument or "")
            stop_um = node.stop_um if felt.stop_mm is None else um(felt.stop_mm)
            yield _Record(node=node, depth_um=um(felt.depth_mm), instrument=instrument, stop_um=stop_um)


def _about(plan: CanalPlan, code: str, record: _Record, limit_um: int) -> Caution:
    return caution(
        code,
        canal=plan.canal,
        value=mm(record.depth_um),
        limit=mm(limit_um),
        unit="mm",
        step=record.node.id,
        instrument=record.instrument.name if record.instrument else "",
    )


def _past(plan: CanalPlan, records: Sequence[_Record]) -> Iterator[Caution]:
    """Deeper than the stop. Where the stop is at the junction, what was passed is the junction."""
    for record in records:
        if record.stop_um is not None and record.depth_um > record.stop_um:
            at_junction = plan.joins is not None and record.stop_um == um(plan.end_mm or 0)
            yield _about(plan, "past-the-junction" if at_junction else "past-the-stop", record, record.stop_um)


def _needle(canal: Canal, plan: CanalPlan, records: Sequence[_Record]) -> Iterator[Caution]:
    code = "needle-open-too-deep" if canal.plan_input.choices.needle.tip == "open" else "needle-too-deep"
    for record in records:
        limit_um = record.node.needle_at_most_um
        if record.node.action is Action.IRRIGATE and limit_um is not None and record.depth_um > limit_um:
            yield _about(plan, code, record, limit_um)


def _patency(plan: CanalPlan, records: Sequence[_Record], figures: Figures) -> Iterator[Caution]:
    """A caution on the last two passes of the small instrument: one that fell short is warned of, two are a block."""
    passed = [record for record in records if record.node.action is Action.RECAPITULATE and record.stop_um is not None]
    short = um(figures["patency.short"])
    last = passed[-figures.count("patency.times") :]
    stuck = [record for record in last if record.depth_um <= (record.stop_um or 0) - short]
    # The last pass decides: a canal that has opened again is not lost.
    if not passed or passed[-1] not in stuck:
        return
    blocked = len(stuck) == figures.count("patency.times")
    yield _about(plan, "canal-blocked" if blocked else "patency-lost", passed[-1], passed[-1].stop_um or 0)


def _gain(canal: Canal, records: Sequence[_Record], figures: Figures) -> Iterator[Caution]:
    """A whole pass of the descending series in which no instrument went deeper than in the pass before."""
    descending = {phase.key for phase in canal.plan_input.technique.phases if phase.kind is PhaseKind.DESCEND}
    depths: dict[str, list[_Record]] = {}
    for record in records:
        if record.node.phase in descending and record.node.action is Action.INSTRUMENT:
            depths.setdefault(record.node.id, []).append(record)
    passes = {len(each) for each in depths.values()}
    # A pass that is still going on, and the first one, have nothing to be compared with.
    if len(passes) != 1 or passes == {1}:
        return
    least = figures.row("passes.gain")
    lasts = [(each[-2], each[-1]) for each in depths.values()]
    arrived = any(now.stop_um is not None and now.depth_um >= now.stop_um for _, now in lasts)
    gained = any(now.depth_um - before.depth_um >= um(least.value) for before, now in lasts)
    if not arrived and not gained:
        deepest_um = max(now.depth_um - before.depth_um for before, now in lasts)
        yield caution("no-gain", canal=canal.input.name, value=mm(deepest_um), limit=least, step=lasts[-1][1].node.id)


def _against_band(plan: CanalPlan, records: Sequence[_Record]) -> Iterator[Caution]:
    """The last recorded depth, where it lies outside the band it was expected in."""
    judged = [step for step in plan.expectation.steps if step.felt is not None] if plan.expectation else []
    if not judged or judged[-1].felt == "as_expected":
        return
    last = judged[-1]
    code = "shorter-than-expected" if last.felt == "shorter" else "deeper-than-expected"
    yield caution(code, canal=plan.canal, value=last.depth_mm, unit="mm", step=last.node, instrument=last.instrument)
