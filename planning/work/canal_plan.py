"""One canal's part of a plan: its end, its order of work, what is withheld, its outline and needle depths."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from planning.canal import prepared_shape
from planning.canal.canal import Canal
from planning.canal.filling import Filling
from planning.canal.prepared_shape import CanalFrame
from planning.canal.profile import Line
from planning.canal.setting_phases import phases_of
from planning.contract.expected import ProfilePoint
from planning.contract.plan_value import CanalPlan, NeedleDepth, NeedleNow, Withheld
from planning.foundation.quantities import mm
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument
from planning.instruments.strain import Bend
from planning.lengths.readings import LengthState
from planning.run_sheet.graph import Action, Node, RunSheet, Step, Target
from planning.tray import selection
from planning.tray.selection import Selection
from planning.work import canal_work, irrigation
from planning.work.canal_work import Order
from planning.work.form import CanalDepths
from planning.work.outcome import Outcome, outcome
from planning.work.withholding import open_phases, shown_whole, without_size


@dataclass(frozen=True, slots=True, kw_only=True)
class Grounds:
    """What numbers of a canal's plan come from, before they are rounded."""

    coronal_mm: float
    """Stop of the coronal instruments."""
    outline: Line
    needle_shapes: Mapping[Instrument, Line]
    """How wide the canal is at least after each instrument that the plan names for the needle."""
    needle_free_mm: tuple[float, ...]
    """How deep the needle is free: at first, and after each of them."""
    bend: Bend | None
    bent_mm: Mapping[Instrument, float]
    """The deepest stop of every instrument whose strain the plan names."""
    filling: Filling | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedCanal:
    """A canal's plan, with the steps from which the table of stops and the order at the tray are made.

    They differ from the plan's own where steps are withheld: with an estimated length all phases are tabled and marked
    provisional, and a supervisor who decides on a canal has to see what the work would be.
    """

    plan: CanalPlan
    tabled: RunSheet
    tabled_steps: tuple[Step, ...]
    """The path that the technique expects, with every instrument of its series, so that no stop depends on an estimate.
    """
    ahead: RunSheet
    """The work that remains."""
    steps: tuple[Step, ...]
    """The path that is expected through `ahead`."""
    may_take: tuple[str, ...]
    """Keys of all instruments in `ahead`, on the path or not."""
    grounds: Grounds
    outcome: Outcome | None
    """The outcome of that path; None for a canal whose order of work has no final size in it."""


def plan_canal(canal: Canal, selected: Selection, figures: Figures) -> PlannedCanal:
    """One canal planned. Raises what its phases refuse, and CanalsDoNotFit."""
    depths = canal_work.depths_of(canal, selected, figures)
    orders = _orders(canal, depths, selected, figures)
    known, sheet, ahead = canal.length.stop_mm is not None, orders.sheet, orders.ahead
    tabled, table_path = orders.table.sheet, orders.table.path
    way = canal_work.expected(canal, selected, ahead, figures)
    final = _final_instrument(canal, selected)
    tabled_steps, steps = _walked(tabled, table_path), _walked(ahead, way.path)
    place = CanalFrame(orifice_mm=canal.orifice_mm, end_mm=mm(depths.end_um), initial_shape=canal.initial_shape)
    comes_to = outcome(canal, selected, final, way, ahead, place) if known else None
    grounds = _grounds(canal, depths, selected, orders, comes_to, place, figures)
    plan = CanalPlan(
        canal=canal.input.name,
        root=canal.input.root,
        reference_point=canal.input.reference_point,
        length=canal.length,
        end_mm=mm(depths.end_um) if known else None,
        junction_mm=mm(canal.join.junction_um) if canal.join and canal.join.junction_um is not None else None,
        joins=canal.join.main if canal.join else None,
        provisional=orders.whole and canal.length.state is LengthState.ESTIMATED,
        final_size=canal.final_size,
        final_taper=selected.series_taper if final is None else final.taper,
        size_range=prepared_shape.with_options(canal.size_range, canal.size_asked, grounds.bend, place, figures),
        outline=tuple(ProfilePoint(from_reference_mm=round(x, 2), diameter_mm=round(d, 3)) for x, d in grounds.outline),
        needle=_needle(depths, grounds, selected, tabled_steps) if known and orders.open else None,
        withheld=orders.withheld,
        run_sheet=sheet,
        expected_path=(
            # Bands were worked out for `ahead`. Of the sheet with steps left out only its path is needed, so no samples
            # are drawn.
            way if ahead is sheet else canal_work.expected(canal, selected, sheet, figures, sure=False)
        ).path,
        expectation=way.expectation,
        strain=prepared_shape.strains(grounds.bent_mm, grounds.bend, figures),
        wall=prepared_shape.wall_left(canal.size_asked.wall, grounds.outline, place) if known else None,
        obturation=grounds.filling.obturation if grounds.filling else None,
        irrigants=irrigation.totals(steps),
    )
    return PlannedCanal(
        plan=plan,
        tabled=tabled,
        tabled_steps=tabled_steps,
        ahead=ahead,
        steps=steps,
        may_take=_instruments(ahead.nodes.values()),
        grounds=grounds,
        outcome=comes_to,
    )


def _grounds(
    canal: Canal,
    depths: CanalDepths,
    selected: Selection,
    orders: _Orders,
    comes_to: Outcome | None,
    place: CanalFrame,
    figures: Figures,
) -> Grounds:
    known, table = canal.length.stop_mm is not None, orders.table
    bend = prepared_shape.bend_of(canal.input, place, figures) if known else None
    final = _final_instrument(canal, selected)
    shapes = _needle_shapes(depths, table.sheet, selected, final) if known and orders.open else {}
    return Grounds(
        coronal_mm=mm(depths.coronal_um),
        outline=canal_work.outline(canal, selected, table.sheet, table.path),
        needle_shapes=shapes,
        needle_free_mm=tuple(mm(depths.needle.free_um(shape)) for shape in (depths.shape, *shapes.values())),
        bend=bend,
        bent_mm=prepared_shape.bent(_deepest(selected, _walked(table.sheet, table.path)), bend),
        filling=comes_to.filling(canal, figures) if comes_to else None,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Orders:
    """A canal's orders of work. Once work has begun there are two: the whole one, for the table of stops, and the one
    from the step that is due."""

    sheet: RunSheet
    """The plan's own."""
    table: Order
    """Keeps what is done already, so that the shape can be judged."""
    ahead: RunSheet
    """Only what remains is expected."""
    withheld: tuple[Withheld, ...]
    whole: bool
    """All phases are tabled although some are withheld."""
    open: bool
    """There is something to work, or to judge."""


def _orders(canal: Canal, depths: CanalDepths, selected: Selection, figures: Figures) -> _Orders:
    open_, withheld = open_phases(phases_of(canal.plan_input), canal.held)
    full = canal_work.written(canal, depths, selected, figures, open_, withheld)
    progress, sheet = canal.input.progress, full.sheet
    if progress:
        sheet = canal_work.resumed(canal, depths, selected, figures, open_, withheld, progress)
    whole = bool(withheld) and canal.length.stop_mm is not None and shown_whole(canal.held)
    table = _tabled(canal, depths, selected, figures, withheld) if whole else full
    ahead = sheet if progress else table.sheet
    return _Orders(sheet=sheet, table=table, ahead=ahead, withheld=withheld, whole=whole, open=bool(open_) or whole)


def _tabled(
    canal: Canal, depths: CanalDepths, selected: Selection, figures: Figures, withheld: Sequence[Withheld]
) -> Order:
    """A sheet of every phase, so that a supervisor can judge what is withheld; with no final size chosen, of the phases
    that need none."""
    every = phases_of(canal.plan_input)
    if canal.worked_size is not None:
        return canal_work.written(canal, depths, selected, figures, every, ())
    return canal_work.written(canal, depths, selected, figures, without_size(every), withheld)


# --- what follows from it -------------------------------------------------------------------------------------------


def _final_instrument(canal: Canal, selected: Selection) -> Instrument | None:
    """The instrument of the final size; None while nobody has chosen a size that the kit can make."""
    technique, name = canal.plan_input.technique, canal.input.name
    if canal.worked_size is None:
        return None
    if selected.series:
        return selection.shaping_of(selected, canal.worked_size, technique, name)
    return selection.hand_of(selected, canal.worked_size, technique, name)


def _deepest(selected: Selection, steps: Sequence[Step]) -> dict[Instrument, float]:
    """Every instrument that works in the canal with the deepest of its stops [mm], in order of use."""
    deepest_mm: dict[Instrument, float] = {}
    for step in steps:
        if step.action is Action.INSTRUMENT and step.instrument and step.stop_um:
            instrument = selected.kit[step.instrument]
            deepest_mm[instrument] = max(deepest_mm.get(instrument, 0.0), mm(step.stop_um))
    return deepest_mm


def _walked(sheet: RunSheet, path: Sequence[str]) -> tuple[Step, ...]:
    """The steps of a walk."""
    return tuple(node for node in (sheet.nodes[id_] for id_ in path) if isinstance(node, Step))


def _instruments(nodes: Iterable[Node]) -> tuple[str, ...]:
    used = (node.instrument for node in nodes if isinstance(node, Step))
    return tuple(dict.fromkeys(key for key in used if key is not None))


def _needle_shapes(
    depths: CanalDepths, sheet: RunSheet, selected: Selection, final: Instrument | None
) -> dict[Instrument, Line]:
    """How wide the canal is at least after each instrument that opens it further for the needle.

    Only instruments of this sheet count: what is withheld opens nothing for the needle either.
    """
    used = _instruments(sheet.nodes.values())
    glide = selected.hand.get(selected.glide_path_to)
    milestones = [
        instrument
        for instrument in (glide, *selected.descending[-1:], final)
        if instrument is not None and instrument.key in used
    ]
    # What is larger than the final size ends short of the canal's end (`shaping_stop_um`): it opens nothing down there.
    distinct = {
        instrument.key: instrument for instrument in milestones if final is None or instrument.size <= final.size
    }
    shape, shapes = depths.shape, {}
    for instrument in distinct.values():
        shape = depths.with_at_end(shape, instrument)
        shapes[instrument] = shape
    return shapes


def _needle(depths: CanalDepths, grounds: Grounds, selected: Selection, steps: Sequence[Step]) -> NeedleDepth:
    """How deep the needle may go, also after each instrument that opens the canal further."""
    begins_um = depths.needle.now_um(depths.shape)
    return NeedleDepth(
        ceiling_mm=mm(depths.needle.ceiling_um),
        begins_mm=mm(begins_um),
        now=tuple(
            NeedleNow(after=instrument.name, at_most_mm=mm(depths.needle.now_um(shape)))
            for instrument, shape in grounds.needle_shapes.items()
        ),
        first_at_ceiling=_first_at_ceiling(depths, selected, steps),
        says=irrigation.chamber_says(depths.needle, depths.shape) if depths.needle.chamber_alone(begins_um) else "",
    )


def _first_at_ceiling(depths: CanalDepths, selected: Selection, steps: Sequence[Step]) -> str | None:
    """The first step after which the needle may go to its ceiling; None where it may from the start, or never.

    An instrument worked to length stands at the end for certain; of the descending series only the smallest counts so.
    """
    certain = {instrument.key for instrument in selected.descending[-1:]}
    by_key = {instrument.key: instrument for instrument in (*selected.hand.values(), *selected.series.values())}
    shape = depths.shape
    if depths.needle.now_um(shape) >= depths.needle.ceiling_um:
        return None
    for step in steps:
        instrument = by_key.get(step.instrument or "")
        cuts = step.action is Action.INSTRUMENT and step.stop_um == depths.end_um
        if instrument is None or not cuts or (step.target is not Target.TO_LENGTH and instrument.key not in certain):
            continue
        shape = depths.with_at_end(shape, instrument)
        if depths.needle.now_um(shape) >= depths.needle.ceiling_um:
            return step.id
    return None
