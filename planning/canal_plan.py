"""One canal's part of a plan: its end, its order of work, what is withheld, its outline and needle depths."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from planning import belief, contact_depth, irrigation, phases, profile, run_sheet, samples, selection, shaped
from planning.apical_size import Asked
from planning.belief import Belief
from planning.errors import CanalsDoNotFit
from planning.expected import Expectation, NaturalCanal, ProfilePoint
from planning.filling import Filled, obturation
from planning.forecast import Working, forecast
from planning.graph import Action, Do, End, RunSheet, Target
from planning.instruments import Instrument, reach_mm
from planning.joins import Join
from planning.natural import Widths, natural_canal
from planning.obturation import Obturation
from planning.plan_input import CanalInput, PlanInput
from planning.plan_value import CanalPlan, Caution, NeedleDepth, NeedleNow, SizeRange, Withheld
from planning.profile import Line
from planning.quantities import mm, stop_um, um
from planning.readings import Length, LengthState
from planning.run_sheet import CanalWork, Sheet, step_name
from planning.samples import MOST_SAMPLES, Samples
from planning.selection import Selection
from planning.shaped import Place
from planning.tables import Figures
from planning.techniques import Phase, PhaseKind, Setting
from planning.walk import expected_path
from planning.withholding import open_phases, shown_whole


@dataclass(frozen=True, slots=True, kw_only=True)
class Canal:
    """One canal with all that has been worked out about it."""

    given: PlanInput
    number: int
    length: Length
    join: Join | None
    size_asked: Asked
    """What the final size hangs on."""
    size_range: SizeRange
    final_size: int
    crown_mm: float
    held: tuple[Caution, ...]
    """The cautions that keep steps of this canal closed."""
    widths: Widths | None
    """Of the canal before anything has been in it; None where they are not known."""

    @property
    def input(self) -> CanalInput:
        return self.given.canals[self.number]

    @property
    def orifice_mm(self) -> float:
        """From the reference point to the orifice: measured, else at the crown's mean length."""
        return shaped.orifice_mm(self.input, self.given.setting, self.crown_mm)

    @property
    def natural(self) -> NaturalCanal | None:
        """The canal before anything has been in it; None without a length or without known widths."""
        if self.widths is None or self.length.working_length_mm is None:
            return None
        return natural_canal(self.widths, self.orifice_mm, self.length.working_length_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """A canal's plan, and the sheet and paths that its stops are tabled and its order at the tray is made from.

    They are the plan's own, but for a length that is only an estimate, where all phases are tabled and marked
    provisional, and for a canal that waits for a supervisor, who has to see what the work would be.
    """

    plan: CanalPlan
    tabled: RunSheet
    table_path: tuple[str, ...]
    """As the technique expects it, with every instrument of its series: stops do not hang on an estimate."""
    path: tuple[str, ...]
    """As it is expected to go."""


def plan_canal(canal: Canal, selected: Selection, figures: Figures) -> Planned:
    """Raises what the phases refuse, and CanalsDoNotFit."""
    work = _work(canal, selected, figures)
    known = canal.length.stop_mm is not None
    every = _phases(canal.given)
    open_, withheld = open_phases(every, canal.held)
    sheet = _written(canal, work, selected, figures, open_, withheld)
    whole = bool(withheld) and known and shown_whole(canal.held)
    tabled = _written(canal, work, selected, figures, every, ()) if whole else sheet
    table_path = _as_written(canal, selected, tabled)
    path, expectation = _expected(canal, selected, tabled, figures)
    final = _final_instrument(canal, selected)
    steps = _walked(tabled, table_path)
    outline = _outline(canal, tabled, table_path)
    place = Place(orifice_mm=canal.orifice_mm, end_mm=mm(work.end_um), natural=canal.natural)
    bend = shaped.bend_of(canal.input, place) if known else None
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
        final_taper=final.taper,
        size_range=shaped.with_options(canal.size_range, canal.size_asked, bend, place, figures),
        outline=tuple(ProfilePoint(from_reference_mm=round(x, 2), diameter_mm=round(d, 3)) for x, d in outline),
        needle=_needle(work, tabled, selected, final, steps) if known and (open_ or whole) else None,
        withheld=withheld,
        run_sheet=sheet,
        expected_path=path if tabled is sheet else _expected(canal, selected, sheet, figures, sure=False)[0],
        expectation=expectation,
        strain=shaped.strains(_deepest(canal, tabled, table_path), bend, figures),
        wall=shaped.wall_left(canal.size_asked.wall, outline, place) if known else None,
        obturation=_obturation(canal, final, outline, steps, place, figures) if known else None,
        irrigants=irrigation.totals(_walked(tabled, path)),
    )
    return Planned(plan=plan, tabled=tabled, table_path=table_path, path=path)


def _work(canal: Canal, selected: Selection, figures: Figures) -> CanalWork:
    full = um(canal.length.stop_mm or 0)
    end = full
    if canal.join is not None and canal.join.end_um is not None:
        end = min(full, canal.join.end_um)
    third = _first_third_um(canal, full, figures)
    curve = canal.input.curve_start_mm
    # A block exercise lifts the coronal third: its coronal instruments may go as deep as they are long.
    coronal = min(end, _shortest_reach_um(selected, figures)) if canal.given.setting is Setting.BLOCK else third
    if curve is not None:
        coronal = min(coronal, max(0, stop_um(um(curve) - um(figures["coronal.before_curve"]))))
    small = canal.given.technique.recapitulate_size
    return CanalWork(
        canal=canal.input.name,
        full_um=full,
        end_um=end,
        coronal_um=min(coronal, end),
        first_third_um=min(third, end),
        final_size=canal.final_size,
        past_junction_size=small,
        largest_size=small if _unjoined(canal) else None,
        irrigant=canal.given.choices.irrigant,
        final_rinse=tuple(canal.given.choices.final_rinse),
        needle=irrigation.limits(canal.given.choices.needle, end, figures),
    )


def _first_third_um(canal: Canal, full_um: int, figures: Figures) -> int:
    """Orifice plus one third of the canal: coronal instruments stay in it, and the needle until there is a length."""
    orifice = um(canal.orifice_mm)
    if canal.length.stop_mm is not None and orifice >= full_um:
        reason = f"{canal.input.name}: an orifice {mm(orifice)} mm deep lies beyond its length. Check the figure."
        raise CanalsDoNotFit(reason=reason, at=("canals", canal.number, "orifice_mm"))
    return stop_um(orifice + max(0, full_um - orifice) // figures.count("coronal.thirds"))


def _shortest_reach_um(selected: Selection, figures: Figures) -> int:
    return min((stop_um(um(reach_mm(one, figures))) for one in selected.coronal), default=0)


def _unjoined(canal: Canal) -> bool:
    return canal.join is not None and canal.join.junction_um is None


# --- the order of work ---------------------------------------------------------------------------------------------


def _phases(given: PlanInput) -> list[Phase]:
    return [phase for phase in given.technique.phases if given.setting in phase.settings]


def _written(
    canal: Canal,
    work: CanalWork,
    selected: Selection,
    figures: Figures,
    open_phases: Sequence[Phase],
    withheld: Sequence[Withheld],
) -> RunSheet:
    sheet = Sheet(work, selected, canal.given.technique, figures)
    looped = _looped(open_phases)
    for phase in open_phases:
        phases.write(sheet, phase, phase.key in looped)
    if withheld:
        last = End(id=run_sheet.PLAN_AGAIN, outcome="plan_again", say=withheld[0].says)
    else:
        last = End(id=run_sheet.FINISHED, outcome="finished", say="Finished: complete the record.")
    return run_sheet.finish(sheet, open_phases, last)


def _looped(every: Sequence[Phase]) -> set[str]:
    """Hold points inside a loop: they are passed on the first pass only."""
    keys = [phase.key for phase in every]
    return {
        every[i].key
        for number, phase in enumerate(every)
        if phase.repeat_from is not None
        for i in range(keys.index(phase.repeat_from), number)
        if every[i].kind is PhaseKind.SIGN_OFF
    }


def _as_written(canal: Canal, selected: Selection, sheet: RunSheet) -> tuple[str, ...]:
    """The way through the sheet by what the technique expects."""
    phase = _descend(canal)
    if phase is None:
        return expected_path(sheet, None, 1)
    return expected_path(sheet, f"{phase.key}/{step_name(selected.descending[-1])}", phase.expected_passes or 1)


def _expected(
    canal: Canal, selected: Selection, sheet: RunSheet, figures: Figures, *, sure: bool = True
) -> tuple[tuple[str, ...], Expectation | None]:
    """The way by the contact-depth estimate; where no widths are known by what the technique expects."""
    natural = canal.natural
    if natural is None or canal.widths is None:
        return _as_written(canal, selected, sheet), None
    descend = _descend(canal)
    working = Working(
        natural=natural,
        kit={one.key: one for one in canal.given.kit.instruments},
        touch=contact_depth.touch(figures),
        felt=canal.input.felt,
        tries=figures.count("make_room.most"),
        flaring=frozenset(p.key for p in canal.given.technique.phases if p.kind is PhaseKind.FLARE),
        descending=descend.key if descend else None,
        most_passes=(descend and descend.most_passes) or 1,
    )
    found = forecast(sheet, working, _belief(canal, canal.widths, working, figures) if sure else None)
    return found.path, found.expectation


def _belief(canal: Canal, widths: Widths, working: Working, figures: Figures) -> Belief | None:
    """The sampled canals; None where no samples are asked for. Recorded depths ask for more of them."""
    given, count = canal.given, canal.given.samples
    if count < 1:
        return None
    if canal.input.felt:
        count = min(MOST_SAMPLES, count * figures.count("samples.felt_times"))
    spread = samples.spread(widths, given.setting is Setting.BLOCK, figures)
    drawn = Samples(count=count, seed=(given.seed, canal.number), spread=spread)
    return Belief(drawn, profile.narrow_line(working.natural), working.touch, belief.reading(figures))


def _descend(canal: Canal) -> Phase | None:
    return next((p for p in canal.given.technique.phases if p.kind is PhaseKind.DESCEND), None)


# --- what follows from it -------------------------------------------------------------------------------------------


def _final_instrument(canal: Canal, selected: Selection) -> Instrument:
    technique, name = canal.given.technique, canal.input.name
    if selected.series:
        return selection.shaping_of(selected, canal.final_size, technique, name)
    return selection.hand_of(selected, canal.final_size, technique, name)


def _outline(canal: Canal, sheet: RunSheet, path: Sequence[str]) -> Line:
    """The shape once all that goes to a known stop has stood there; the descending series is left out of it, as how
    deep it goes is not known beforehand."""
    kit = {one.key: one for one in canal.given.kit.instruments}
    coronal = {p.key for p in canal.given.technique.phases if p.kind is PhaseKind.FLARE}
    stands = {
        (node.instrument, node.stop_um): profile.Stand(instrument=kit[node.instrument], tip_mm=mm(node.stop_um))
        for node in (sheet.nodes[id_] for id_ in path)
        if isinstance(node, Do) and node.action is Action.INSTRUMENT and node.instrument and node.stop_um
        if node.target is Target.TO_LENGTH or node.phase in coronal
    }
    return profile.outline(tuple(stands.values()), from_mm=canal.orifice_mm)


def _deepest(canal: Canal, sheet: RunSheet, path: Sequence[str]) -> dict[Instrument, float]:
    """Every instrument that works in the canal with its deepest stop [mm], in order of use."""
    kit = {one.key: one for one in canal.given.kit.instruments}
    found: dict[Instrument, float] = {}
    for node in (sheet.nodes[id_] for id_ in path):
        if isinstance(node, Do) and node.action is Action.INSTRUMENT and node.instrument and node.stop_um:
            one = kit[node.instrument]
            found[one] = max(found.get(one, 0.0), mm(node.stop_um))
    return found


def _walked(sheet: RunSheet, path: Sequence[str]) -> tuple[Do, ...]:
    """The steps of a walk."""
    return tuple(node for node in (sheet.nodes[id_] for id_ in path) if isinstance(node, Do))


def _obturation(
    canal: Canal, final: Instrument, outline: Line, steps: Sequence[Do], place: Place, figures: Figures
) -> Obturation | None:
    """None for a canal whose order of work does not get to its final size."""
    end = um(place.end_mm)
    if not any(step.instrument == final.key and step.stop_um == end for step in steps):
        return None
    natural = () if place.natural is None else profile.upto(profile.narrow_line(place.natural), place.end_mm)
    prepared = profile.upto(profile.upper(natural, outline), place.end_mm)
    filled = Filled(natural=natural, prepared=prepared, size=final.size, taper=final.taper)
    return obturation(canal.given.kit.filling, filled, figures)


def _needle(
    work: CanalWork, sheet: RunSheet, selected: Selection, final: Instrument, steps: Sequence[Do]
) -> NeedleDepth:
    """Depths after instruments that the sheet has: what is withheld opens nothing for the needle either."""
    used = {node.instrument for node in sheet.nodes.values() if isinstance(node, Do)}
    glide = selected.hand.get(selected.glide_path_to)
    milestones = [one for one in (glide, *selected.descending[-1:], final) if one is not None and one.key in used]
    distinct = {one.key: one for one in milestones if one.size <= final.size}
    ceiling_um = work.needle.ceiling_um
    if work.largest_size is not None:
        # Where it joins is not known: the needle stays where nothing can be passed unseen.
        ceiling_um = min(ceiling_um, work.first_third_um)
    return NeedleDepth(
        ceiling_mm=mm(ceiling_um),
        now=tuple(
            NeedleNow(after=one.name, at_most_mm=mm(work.needle.now_um(one, work.first_third_um)))
            for one in distinct.values()
        ),
        first_at_ceiling=_first_at_ceiling(work, selected, steps, ceiling_um),
    )


def _first_at_ceiling(work: CanalWork, selected: Selection, steps: Sequence[Do], ceiling_um: int) -> str | None:
    """The first step whose instrument, once at the end, lets the needle to its ceiling: of the descending series only
    the smallest is taken to have been there."""
    certain = {one.key for one in selected.descending[-1:]}
    by_key = {one.key: one for one in (*selected.hand.values(), *selected.series.values())}
    for step in steps:
        one = by_key.get(step.instrument or "")
        cuts = step.action is Action.INSTRUMENT and step.stop_um == work.end_um
        if one is None or not cuts or (step.target is not Target.TO_LENGTH and one.key not in certain):
            continue
        if work.needle.now_um(one, work.first_third_um) >= ceiling_um:
            return step.id
    return None
