"""One canal's part of a plan: its end, its order of work, what is withheld, its outline and needle depths."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from planning.canal import prepared_shape, profile
from planning.canal.canal import Canal
from planning.canal.prepared_shape import CanalFrame
from planning.canal.profile import Line
from planning.canal.setting_phases import phases_of
from planning.contract.expected import ProfilePoint
from planning.contract.plan_value import CanalPlan, NeedleDepth, NeedleNow, Withheld
from planning.foundation.quantities import mm
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument
from planning.lengths.readings import LengthState
from planning.run_sheet.graph import Action, RunSheet, Step, Target
from planning.tray import selection
from planning.tray.selection import Selection
from planning.work import canal_work, irrigation
from planning.work.outcome import Outcome, outcome
from planning.work.sheet_builder import CanalWork
from planning.work.withholding import open_phases, shown_whole, without_size


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedCanal:
    """A canal's plan, with the sheets and paths from which the table of stops and the order at the tray are made.

    They differ from the plan's own where steps are withheld: with an estimated length all phases are tabled and marked
    provisional, and a supervisor who decides on a canal has to see what the work would be.
    """

    plan: CanalPlan
    tabled: RunSheet
    table_path: tuple[str, ...]
    """The path that the technique expects, with every instrument of its series, so that no stop depends on an estimate.
    """
    ahead: RunSheet
    """The work that remains."""
    path: tuple[str, ...]
    """The path that is expected through `ahead`."""
    outcome: Outcome | None
    """The outcome of that path; None for a canal whose order of work has no final size in it."""


def plan_canal(canal: Canal, selected: Selection, figures: Figures) -> PlannedCanal:
    """One canal planned. Raises what its phases refuse, and CanalsDoNotFit."""
    work = canal_work.work_of(canal, selected, figures)
    known = canal.length.stop_mm is not None
    every = phases_of(canal.plan_input)
    open_, withheld = open_phases(every, canal.held)
    # Once work has begun there are two orders of work: the whole one, for the table of stops, and the one from the step
    # that is due.
    full = canal_work.written(canal, work, selected, figures, open_, withheld)
    progress = canal.input.progress
    sheet = canal_work.written(canal, work, selected, figures, open_, withheld, progress) if progress else full
    whole = bool(withheld) and known and shown_whole(canal.held)
    tabled = _tabled(canal, work, selected, figures, withheld) if whole else full
    table_path = canal_work.as_written(canal, selected, tabled)
    # The table keeps what is done already, so that the shape can be judged; only what remains is expected.
    ahead = sheet if progress else tabled
    way = canal_work.expected(canal, selected, ahead, figures)
    final = _final_instrument(canal, selected)
    steps = _walked(tabled, table_path)
    outline = canal_work.outline(canal, selected, tabled, table_path)
    place = CanalFrame(orifice_mm=canal.orifice_mm, end_mm=mm(work.end_um), initial_shape=canal.initial_shape)
    bend = prepared_shape.bend_of(canal.input, place, figures) if known else None
    comes_to = outcome(canal, selected, final, way, ahead, place) if known else None
    plan = CanalPlan(
        canal=canal.input.name,
        root=canal.input.root,
        reference_point=canal.input.reference_point,
        length=canal.length,
        end_mm=mm(work.end_um) if known else None,
        junction_mm=mm(canal.join.junction_um) if canal.join and canal.join.junction_um is not None else None,
        joins=canal.join.main if canal.join else None,
        provisional=whole and canal.length.state is LengthState.ESTIMATED,
        final_size=canal.final_size,
        final_taper=selected.series_taper if final is None else final.taper,
        size_range=prepared_shape.with_options(canal.size_range, canal.size_asked, bend, place, figures),
        outline=tuple(ProfilePoint(from_reference_mm=round(x, 2), diameter_mm=round(d, 3)) for x, d in outline),
        needle=_needle(work, tabled, selected, final, steps) if known and (open_ or whole) else None,
        withheld=withheld,
        run_sheet=sheet,
        expected_path=(
            # Bands were worked out for `ahead`. Of the sheet with steps left out only its path is needed, so no samples
            # are drawn.
            way if ahead is sheet else canal_work.expected(canal, selected, sheet, figures, sure=False)
        ).path,
        expectation=way.expectation,
        strain=prepared_shape.strains(_deepest(selected, tabled, table_path), bend, figures),
        wall=prepared_shape.wall_left(canal.size_asked.wall, outline, place) if known else None,
        obturation=comes_to.obturation(canal, figures) if comes_to else None,
        irrigants=irrigation.totals(_walked(ahead, way.path)),
    )
    return PlannedCanal(plan=plan, tabled=tabled, table_path=table_path, ahead=ahead, path=way.path, outcome=comes_to)


def _tabled(
    canal: Canal, work: CanalWork, selected: Selection, figures: Figures, withheld: Sequence[Withheld]
) -> RunSheet:
    """A sheet of every phase, so that a supervisor can judge what is withheld; with no final size chosen, of the phases
    that need none."""
    every = phases_of(canal.plan_input)
    if canal.worked_size is not None:
        return canal_work.written(canal, work, selected, figures, every, ())
    return canal_work.written(canal, work, selected, figures, without_size(every), withheld)


# --- what follows from it -------------------------------------------------------------------------------------------


def _final_instrument(canal: Canal, selected: Selection) -> Instrument | None:
    """The instrument of the final size; None while nobody has chosen a size that the kit can make."""
    technique, name = canal.plan_input.technique, canal.input.name
    if canal.worked_size is None:
        return None
    if selected.series:
        return selection.shaping_of(selected, canal.worked_size, technique, name)
    return selection.hand_of(selected, canal.worked_size, technique, name)


def _deepest(selected: Selection, sheet: RunSheet, path: Sequence[str]) -> dict[Instrument, float]:
    """Every instrument that works in the canal with the deepest of its stops [mm], in order of use."""
    deepest_mm: dict[Instrument, float] = {}
    for node in (sheet.nodes[id_] for id_ in path):
        if isinstance(node, Step) and node.action is Action.INSTRUMENT and node.instrument and node.stop_um:
            instrument = selected.kit[node.instrument]
            deepest_mm[instrument] = max(deepest_mm.get(instrument, 0.0), mm(node.stop_um))
    return deepest_mm


def _walked(sheet: RunSheet, path: Sequence[str]) -> tuple[Step, ...]:
    """The steps of a walk."""
    return tuple(node for node in (sheet.nodes[id_] for id_ in path) if isinstance(node, Step))


def _needle(
    work: CanalWork, sheet: RunSheet, selected: Selection, final: Instrument | None, steps: Sequence[Step]
) -> NeedleDepth:
    """How deep the needle may go, also after each instrument that opens the canal further.

    Only instruments of this sheet count: what is withheld opens nothing for the needle either.
    """
    used = {node.instrument for node in sheet.nodes.values() if isinstance(node, Step)}
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
    shape, now, begins_um = work.shape, [], work.needle.now_um(work.shape)
    for instrument in distinct.values():
        shape = _with(work, shape, instrument)
        now.append(NeedleNow(after=instrument.name, at_most_mm=mm(work.needle.now_um(shape))))
    return NeedleDepth(
        ceiling_mm=mm(work.needle.ceiling_um),
        begins_mm=mm(begins_um),
        now=tuple(now),
        first_at_ceiling=_first_at_ceiling(work, selected, steps),
        says=irrigation.chamber_says(work.needle, work.shape) if work.needle.chamber_alone(begins_um) else "",
    )


def _with(work: CanalWork, shape: Line, instrument: Instrument) -> Line:
    """The shape once the instrument has stood at the canal's end."""
    stand = profile.Stand(instrument=instrument, tip_mm=mm(work.end_um))
    return profile.upper(shape, stand.line(mm(work.needle.orifice_um)))


def _first_at_ceiling(work: CanalWork, selected: Selection, steps: Sequence[Step]) -> str | None:
    """The first step after which the needle may go to its ceiling; None where it may from the start, or never.

    An instrument worked to length stands at the end for certain; of the descending series only the smallest counts so.
    """
    certain = {instrument.key for instrument in selected.descending[-1:]}
    by_key = {instrument.key: instrument for instrument in (*selected.hand.values(), *selected.series.values())}
    shape = work.shape
    if work.needle.now_um(shape) >= work.needle.ceiling_um:
        return None
    for step in steps:
        instrument = by_key.get(step.instrument or "")
        cuts = step.action is Action.INSTRUMENT and step.stop_um == work.end_um
        if instrument is None or not cuts or (step.target is not Target.TO_LENGTH and instrument.key not in certain):
            continue
        shape = _with(work, shape, instrument)
        if work.needle.now_um(shape) >= work.needle.ceiling_um:
            return step.id
    return None
