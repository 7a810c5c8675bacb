"""How one canal is worked: its stops, its order of work, and the ways through it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache, reduce

from planning.canal import prepared_shape, profile
from planning.canal.canal import Canal
from planning.canal.initial_shape import Widths
from planning.canal.profile import Line, Stand
from planning.canal.setting_phases import phases_of
from planning.contract.plan_input import Progress
from planning.contract.plan_value import Withheld
from planning.depth import contact_depth, reading, samples, sure
from planning.depth.belief import Belief
from planning.depth.forecast import Forecast, Working, forecast
from planning.depth.samples import CORNERS_PER_INSERTION, MOST_SAMPLES, MOST_WORK, Samples
from planning.foundation.errors import CanalsDoNotFit
from planning.foundation.quantities import mm, stop_um, um
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import reach_mm
from planning.lengths.readings import LengthState
from planning.run_sheet.graph import Action, End, RunSheet, Step, Target
from planning.run_sheet.walk import Walk, expected_path
from planning.techniques.technique import Phase, PhaseKind, Setting, Technique
from planning.tray.selection import Selection
from planning.work import irrigation, joined, mid_course, phases, sheet_builder
from planning.work.flaring import nested
from planning.work.form import CanalDepths, Form
from planning.work.sheet_builder import Asked, Sheet, step_name

MOST_FORMS = 64  # of 0.2 MB each


def depths_of(canal: Canal, selected: Selection, figures: Figures) -> CanalDepths:
    """What the canal's order of work is filled in from. Raises CanalsDoNotFit."""
    full = um(canal.length.stop_mm or 0)
    end = full
    if canal.join is not None and canal.join.end_um is not None:
        # Nothing passes a junction that is known: the two canals are one below it, and the main one is worked to the
        # terminus.
        end = min(full, canal.join.end_um)
    third = _first_third_um(canal, full, figures)
    curve = canal.input.curve_start_mm
    # In a block the coronal third is no limit: coronal instruments may go as deep as they are long.
    coronal = min(end, _shortest_reach_um(selected, figures)) if canal.plan_input.setting is Setting.BLOCK else third
    if curve is not None:
        # A charted curve may begin within the coronal third: then these instruments stay before it.
        coronal = min(coronal, max(0, stop_um(um(curve) - um(figures["coronal.before_curve"]))))
    return CanalDepths(
        full_um=full,
        end_um=end,
        coronal_um=min(coronal, end),
        first_third_um=min(third, end),
        needle=irrigation.limits(
            canal.plan_input.choices.needle,
            orifice_um=um(canal.orifice_mm),
            end_um=end,
            # Nobody knows yet where it joins: below the coronal third the needle could pass the junction unseen.
            most_um=min(third, end) if _unjoined(canal) else None,
            figures=figures,
        ),
        shape=_wide_at_least(canal, selected, figures),
    )


def _wide_at_least(canal: Canal, selected: Selection, figures: Figures) -> Line:
    """How wide the canal is at least: the low side of its widths as found, opened by all that has surely been in it."""
    shape: Line = ()
    if canal.initial_shape is not None and canal.widths is not None:
        spread = samples.spread(canal.widths, canal.plan_input.setting is Setting.BLOCK, figures)
        shape = samples.low_side(profile.narrow_line(canal.initial_shape), spread, figures["needle.low_share"])
    made = canal.input.progress.made if canal.input.progress else ()
    stood = sure.surely_stood(made, selected.kit, shape, contact_depth.light_touch(figures)) if made else ()
    return reduce(profile.upper, (stand.line(canal.orifice_mm) for stand in stood), shape)


def _first_third_um(canal: Canal, full_um: int, figures: Figures) -> int:
    """Orifice plus one third of the canal: coronal instruments stay in it, and the needle until there is a length."""
    orifice = um(canal.orifice_mm)
    # Without a length `full_um` is 0, and every orifice would seem to lie beyond it.
    if canal.length.stop_mm is not None and orifice >= full_um:
        reason = f"{canal.input.name}: an orifice {mm(orifice)} mm deep lies beyond its length. Check the figure."
        raise CanalsDoNotFit(reason=reason, at=("canals", canal.number, "orifice_mm"))
    return stop_um(orifice + max(0, full_um - orifice) // figures.count("coronal.thirds"))


def _shortest_reach_um(selected: Selection, figures: Figures) -> int:
    # The shortest decides, as all coronal instruments get one and the same stop.
    return min((stop_um(um(reach_mm(instrument, figures))) for instrument in selected.coronal), default=0)


def _unjoined(canal: Canal) -> bool:
    return canal.join is not None and canal.join.junction_um is None


# --- the order of work ---------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """A canal's order of work from its beginning."""

    sheet: RunSheet
    path: tuple[str, ...]
    """The path through it that the technique expects."""


def written(
    canal: Canal,
    depths: CanalDepths,
    selected: Selection,
    figures: Figures,
    open_phases: Sequence[Phase],
    withheld: Sequence[Withheld],
) -> Order:
    """The order of work through the open phases."""
    form, path = form_once(_asked(canal, depths, selected, open_phases, withheld))
    return Order(sheet=_filled(form, canal, depths, withheld, figures), path=path)


def resumed(
    canal: Canal,
    depths: CanalDepths,
    selected: Selection,
    figures: Figures,
    open_phases: Sequence[Phase],
    withheld: Sequence[Withheld],
    progress: Progress,
) -> RunSheet:
    """The order of work through the open phases from where the work stands."""
    every, length_mm = phases_of(canal.plan_input), canal.length.working_length_mm
    sheet = _all_phases(_asked(canal, depths, selected, open_phases, withheld))
    form = mid_course.finish(sheet, every, _last(withheld), progress, length_mm, depths.full_um)
    return _filled(form, canal, depths, withheld, figures)


@lru_cache(maxsize=MOST_FORMS)
def form_once(asked: Asked) -> tuple[Form, tuple[str, ...]]:
    """The order of work with its depths left open, and the path through it that the technique expects."""
    form = sheet_builder.finish(_all_phases(asked), _end(asked.closed))
    return form, as_written(asked.plan_input.technique, asked.selection, form.unfilled())


def _asked(
    canal: Canal,
    depths: CanalDepths,
    selected: Selection,
    open_phases: Sequence[Phase],
    withheld: Sequence[Withheld],
) -> Asked:
    small = canal.plan_input.technique.recapitulate_size
    return Asked(
        selection=selected,
        phases=tuple(open_phases),
        closed=bool(withheld),
        final_size=canal.worked_size,
        largest_size=small if _unjoined(canal) else None,
        may_widen=canal.length.state is not LengthState.UNSETTLED,
        nested=nested(selected.coronal or tuple(selected.hand.values()), depths.coronal_um),
        canal=canal.input.name,
        plan_input=canal.plan_input,
    )


def _all_phases(asked: Asked) -> Sheet:
    sheet, looped = Sheet(asked), _looped(asked.phases)
    for phase in asked.phases:
        phases.write(sheet, phase, phase.key in looped)
    return sheet


def _last(withheld: Sequence[Withheld]) -> End:
    return _end(True, withheld[0].says) if withheld else _end(False, "Finished: complete the record.")


def _end(closed: bool, say: str = "") -> End:
    if closed:
        return End(id=sheet_builder.PLAN_AGAIN, outcome="plan_again", say=say)
    return End(id=sheet_builder.FINISHED, outcome="finished", say=say)


def _filled(form: Form, canal: Canal, depths: CanalDepths, withheld: Sequence[Withheld], figures: Figures) -> RunSheet:
    sheet = form.filled(canal.input.name, depths, _last(withheld), figures)
    return joined.waiting(sheet, canal, phases_of(canal.plan_input))


def _looped(every: Sequence[Phase]) -> set[str]:
    """Keys of the hold points and gaugings that lie inside a loop: they are worked on its first pass only."""
    keys = [phase.key for phase in every]
    return {
        every[i].key
        for number, phase in enumerate(every)
        if phase.repeat_from is not None
        for i in range(keys.index(phase.repeat_from), number)
        if every[i].kind in (PhaseKind.SIGN_OFF, PhaseKind.GAUGE)
    }


def as_written(technique: Technique, selected: Selection, sheet: RunSheet) -> tuple[str, ...]:
    """The path through the sheet that the technique expects."""
    phase = _descend(technique)
    if phase is None:
        return expected_path(sheet, None, 1)
    return expected_path(sheet, f"{phase.key}/{step_name(selected.descending[-1])}", phase.expected_passes or 1)


def expected(
    canal: Canal,
    selected: Selection,
    sheet: RunSheet,
    figures: Figures,
    *,
    sure: bool = True,
    so_far: Walk | None = None,
) -> Forecast:
    """The path by the contact-depth estimate; where no widths are known, the path that the technique expects.

    With `so_far` it begins as that walk went. `sure` asks for the samples, and so for bands.
    """
    initial_shape = canal.initial_shape
    if initial_shape is None or canal.widths is None:
        path = as_written(canal.plan_input.technique, selected, sheet)
        return Forecast(path=path, expectation=None, stood=_at_known_stops(canal, selected, sheet, path))
    progress = canal.input.progress
    descend = _descend(canal.plan_input.technique)
    flaring = [p.key for p in canal.plan_input.technique.phases if p.kind is PhaseKind.FLARE]
    working = Working(
        initial_shape=initial_shape,
        kit=selected.kit,
        touch=contact_depth.light_touch(figures),
        # Depths felt before this order of work are among the insertions in `made`: they must not count twice.
        felt=() if progress else canal.input.felt,
        made=progress.made if progress else (),
        tries=figures.count("make_room.most"),
        flaring=frozenset(flaring),
        descending=descend.key if descend else None,
        one_pass=_one_pass(flaring, descend, selected),
        most_passes=(descend and descend.most_passes) or 1,
        as_if_straight=prepared_shape.is_bent(canal.input, figures),
        passed=passed(canal, selected),
    )
    more = bool(canal.input.felt or progress or (so_far and so_far.left))
    # As many as the samples may have to be worked through: all that are behind, and all that the sheet has.
    insertions = len(working.felt) + len(working.made) + len(so_far.left if so_far else ()) + _insertions(sheet)
    believed = _belief(canal, canal.widths, working, figures, more_over=insertions if more else 0) if sure else None
    return forecast(sheet, working, believed, so_far)


def passed(canal: Canal, selected: Selection) -> Line:
    """How wide the canal is at least because the hand size below the first binder went to its end; empty where nobody
    gauged."""
    binder, end_mm = canal.size_asked.first_binder, canal.end_mm
    below = [size for size in selected.hand if binder is not None and size < binder]
    if not below or end_mm is None or not canal.size_asked.binder_counts:
        return ()
    return Stand(instrument=selected.hand[max(below)], tip_mm=end_mm).line(canal.orifice_mm)


def _at_known_stops(canal: Canal, selected: Selection, sheet: RunSheet, path: Sequence[str]) -> tuple[Stand, ...]:
    """Where instruments on the path stand for certain. A descending series is left out: its depth is not known."""
    coronal = {p.key for p in canal.plan_input.technique.phases if p.kind is PhaseKind.FLARE}
    stands = {
        (node.instrument, node.stop_um): Stand(instrument=selected.kit[node.instrument], tip_mm=mm(node.stop_um))
        for node in (sheet.nodes[id_] for id_ in path)
        if isinstance(node, Step) and node.action is Action.INSTRUMENT and node.instrument and node.stop_um
        if node.target is Target.TO_LENGTH or node.phase in coronal
    }
    return tuple(stands.values())


def outline(canal: Canal, selected: Selection, sheet: RunSheet, path: Sequence[str]) -> Line:
    """The shape once all that goes to a known stop has stood there."""
    return profile.outline(_at_known_stops(canal, selected, sheet, path), from_mm=canal.orifice_mm)


def _one_pass(flaring: Sequence[str], descend: Phase | None, selected: Selection) -> list[str]:
    worked = [(phase, instrument) for phase in flaring for instrument in selected.coronal]
    if descend is not None:
        worked += [(descend.key, instrument) for instrument in selected.descending]
    return [f"{phase}/{step_name(instrument)}" for phase, instrument in worked]


def _belief(canal: Canal, widths: Widths, working: Working, figures: Figures, *, more_over: int) -> Belief | None:
    """The sampled canals; None where no samples are asked for.

    Recorded depths make most samples worth little, so more are drawn: as many as the work of `more_over` insertions
    allows.
    """
    plan_input, count = canal.plan_input, canal.plan_input.samples
    if count < 1:
        return None
    # Shared out evenly, so that the first canal cannot use up what the others need.
    most_work = MOST_WORK // len(plan_input.canals)
    if more_over:
        more = min(
            MOST_SAMPLES, count * figures.count("samples.felt_times"), most_work // (more_over * CORNERS_PER_INSERTION)
        )
        # Recorded depths never make the samples fewer than were asked for.
        count = max(count, more)
    spread = samples.spread(widths, plan_input.setting is Setting.BLOCK, figures)
    # The canal's place in the list is part of the seed: otherwise all canals of a tooth would be drawn alike.
    drawn = Samples(count=count, seed=(plan_input.seed, canal.number), spread=spread)
    line, reading_error = profile.narrow_line(working.initial_shape), reading.reading(figures)
    shallow_mm = figures["depth.bend_shallow"] if working.as_if_straight else 0.0
    return Belief(drawn, line, working.touch, reading_error, shallow_mm=shallow_mm, most_work=most_work)


def _insertions(sheet: RunSheet) -> int:
    return sum(isinstance(node, Step) and node.action is Action.INSTRUMENT for node in sheet.nodes.values())


def _descend(technique: Technique) -> Phase | None:
    return next((p for p in technique.phases if p.kind is PhaseKind.DESCEND), None)
