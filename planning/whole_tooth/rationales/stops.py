"""Why instruments and the needle are stopped where they are."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import reduce

from planning.anatomy import like
from planning.contract.rationale import Calculation, Rationale, Rounding
from planning.foundation import tables
from planning.foundation.quantities import mm
from planning.foundation.tables import Figure
from planning.instruments.iso_3630 import Instrument, sizes_between
from planning.run_sheet.graph import Action, Step
from planning.techniques.technique import PhaseKind, Setting
from planning.whole_tooth.rationales.about import Entry, RationaleContext, rationale
from planning.whole_tooth.rationales.lengths import length_term
from planning.whole_tooth.rationales.terms import Term, added, comes_to, known, length, no_less, no_more
from planning.work.irrigation import outside


def stop_rationales(about: RationaleContext) -> Iterator[Rationale]:
    """Under `stops.` and the kind of stop, as the stop table names it, or the target, as a step of the order of work
    has it: full, end, coronal, make_room, step_back; to_length, to_resistance."""
    if about.plan.end_mm is None:
        return
    working = ("working length", about.plan.length.working_length_mm, "mm")
    rule = "To the working length, rounded down to half a millimetre, and never beyond it."
    yield rationale("stops.full", rule, (working,), (), _stop(length_term(about), about.plan.length.stop_mm))
    yield from _end(about, working)
    yield _coronal(about)
    less, per = about.figures.row("make_room.less"), about.figures.row("final.above_short")
    end = ("canal's end", about.plan.end_mm, "mm")
    rule = "Larger instruments that make room stay short of where the smaller one stopped, and of the canal's end."
    room = _short_of_end(about, "make_room")
    yield rationale("stops.make_room", rule, (("short by", less.value, "mm"), end), (less,), *room)
    rule = "Larger than the final size: this far short of the end for every size above it, and never nearer than that."
    entered = (
        ("final size", about.plan.final_size, "size"),
        ("short by, for each size", per.value, "mm"),
        ("at least", less.value, "mm"),
        end,
    )
    above = _short_of_end(about, "above_final")
    yield rationale("stops.above_final", rule, entered, (per, less), *above)
    for phase in about.plan_input.technique.phases:
        if phase.kind is PhaseKind.STEP_BACK:
            rule = "Each larger size one step of the technique shorter than the one before."
            back = _short_of_end(about, "step_back")
            yield rationale("stops.step_back", rule, (("step", phase.step_mm, "mm"), end), (less,), *back)


def _stop(term: Term, stop_mm: float | None) -> Calculation:
    """A length rounded down to where a stop can be set; there must be one."""
    return comes_to(term, stop_mm or 0.0, "mm", Rounding.HALF_MM_DOWN)


def _short_of_end(about: RationaleContext, kind: str) -> list[Calculation]:
    """The stops of one kind that lie short of the canal's end, each once, the deepest first."""
    end = length("canal's end", about.plan.end_mm or 0.0)
    calculations: dict[float, Calculation] = {}
    for node in about.planned.tabled.nodes.values():
        if isinstance(node, Step) and node.action is Action.INSTRUMENT and node.instrument is not None:
            own, short = _kept_short(about, node, about.selected.kit[node.instrument])
            if own == kind:
                stop_mm = mm(node.stop_um or 0)
                calculations.setdefault(stop_mm, comes_to(no_less(end - short, 0), stop_mm, "mm"))
    return [calculations[stop_mm] for stop_mm in sorted(calculations, reverse=True)]


def _kept_short(about: RationaleContext, node: Step, instrument: Instrument) -> tuple[str, Term]:
    """What kind of stop it is, and how far short of the canal's end."""
    phase = next(each for each in about.plan_input.technique.phases if each.key == node.phase)
    less, per = about.figures.row("make_room.less"), about.figures.row("final.above_short")
    above, least = sizes_between(about.canal.worked_size or instrument.size, instrument.size), _row("short by", less)
    if phase.kind is PhaseKind.STEP_BACK and above:
        steps = known("steps", above // about.figures.count("step_back.next_size"), "")
        return "step_back", no_less(steps * known("step", phase.step_mm or 0.0, "mm"), least)
    short = no_less(known("sizes above the final", above, "") * _row("for each size", per), least) if above else least
    if node.shorter_than is not None:
        return "make_room", short
    beyond_final = phase.kind is PhaseKind.DESCEND and mm(node.stop_um or 0) != about.plan.end_mm
    return "above_final" if beyond_final else "", short


def _row(name: str, row: Figure) -> Term:
    return known(name, row.value, row.unit)


def _end(about: RationaleContext, working: Entry) -> Iterator[Rationale]:
    junction, plan = about.canal.input.junction, about.plan
    if plan.junction_mm is None or junction is None:
        rule = "The canal runs to its own end: its deepest stop is that of the working length."
        yield from _to_the_end(rule, (working,), _stop(length_term(about), plan.end_mm))
        return
    at = junction.at_length_mm if junction.at_length_mm is not None else plan.length.working_length_mm
    entered = (
        ("length when it was measured", at, "mm"),
        ("junction from the terminus", junction.from_terminus_mm, "mm"),
    )
    met = length(entered[0][0], at or 0.0) - length(entered[1][0], junction.from_terminus_mm)
    rule = f"The canal meets {plan.joins}: its length when the junction was measured, less the distance found."
    yield rationale("junction_mm", rule, entered, (), comes_to(met, plan.junction_mm, "mm", Rounding.HUNDREDTH))
    rule = f"It joins {plan.joins}: nothing passes the junction once it is known. Rounded down."
    # A length that was taken again may have come out shorter than where the canals were found to meet.
    own = length("working length", plan.length.working_length_mm or 0.0)
    yield from _to_the_end(rule, entered, _stop(no_more(met, own), plan.end_mm))


def _to_the_end(rule: str, entered: tuple[Entry, ...], stop: Calculation) -> Iterator[Rationale]:
    yield rationale("end_mm", rule, entered, (), stop)
    yield rationale("stops.end", rule, entered, (), stop)
    yield rationale("stops.to_length", rule, entered, (), stop)
    no_push = f"No push: it may rest short of this, and goes no deeper. {rule}"
    yield rationale("stops.to_resistance", no_push, entered, (), stop)


def _coronal(about: RationaleContext) -> Rationale:
    stop = about.planned.grounds.coronal_mm
    curve_mm, before = about.canal.input.curve_start_mm, about.figures.row("coronal.before_curve")
    bounds = [length("canal's end", about.plan.end_mm or 0.0)]
    if curve_mm is not None:
        bounds.append(no_less(length("curve begins", curve_mm) - _row("short of the curve by", before), 0))
    if about.plan_input.setting is Setting.BLOCK:
        grip = about.figures.row("instrument.stop_and_grip")
        # The shortest decides, as all coronal instruments get one and the same stop.
        shortest = min((each.length_mm for each in about.selected.coronal), default=grip.value)
        bounds.append(known("its length", shortest, "mm") - _row("stop and grip", grip))
        rule = "In a training block as deep as the shortest coronal instrument reaches with its stop on."
        calculation = _stop(reduce(no_more, bounds), stop)
        return rationale("stops.coronal", rule, (("stop and grip", grip.value, "mm"),), (grip,), calculation)
    thirds = about.figures.row("coronal.thirds")
    rule = "To the end of the canal's coronal part, rounded down; short of a curve that begins above that."
    entered: tuple[Entry, ...] = (
        ("orifice", about.canal.orifice_mm, "mm"),
        ("working length", about.plan.length.stop_mm, "mm"),
        ("parts of the canal", thirds.value, ""),
        ("curve begins", curve_mm, "mm"),
        ("short of the curve by", None if curve_mm is None else before.value, "mm"),
    )
    calculation = _stop(reduce(no_more, bounds, _first_third(about)), stop)
    return rationale("stops.coronal", rule, entered, (thirds, before, *_crown(about)), calculation)


def _first_third(about: RationaleContext) -> Term:
    """Where the coronal part of a canal ends that has a length."""
    orifice = length("orifice", about.canal.orifice_mm)
    whole = length("working length", about.plan.length.stop_mm or 0.0) - orifice
    parts = about.figures.row("coronal.thirds")
    return orifice + whole / known("parts of the canal", int(parts.value), "")


def _crown(about: RationaleContext) -> tuple[Figure, ...]:
    """The row that the orifice comes from where nobody measured it."""
    if about.canal.input.orifice_mm is not None or about.plan_input.setting is Setting.BLOCK:
        return ()
    crowns = (row for row in tables.rows("crowns") if row["tooth"] == like(about.tooth_iso))
    return tuple(about.figures.cell("crowns", row, "crown_mm", row["tooth"]) for row in crowns)


def needle_rationales(about: RationaleContext) -> Iterator[Rationale]:
    if about.plan.needle is None or about.plan.end_mm is None:
        return
    needle, depth = about.plan_input.choices.needle, about.plan.needle
    short, clearance = about.figures.row(f"needle.short_{needle.tip}"), about.figures.row("needle.clearance")
    wide = outside(needle, about.figures)
    end = ("canal's end", about.plan.end_mm, "mm")
    ceiling = no_less(length("canal's end", about.plan.end_mm) - _row("short by", short), 0)
    if about.canal.join is not None and about.canal.join.junction_um is None:
        rule = "Where the canal joins is not known: no deeper than its coronal part."
        stop = _stop(no_more(ceiling, _first_third(about)), depth.ceiling_mm)
        yield rationale("needle.ceiling_mm", rule, (end,), (about.figures.row("coronal.thirds"), short), stop)
    else:
        rule = f"{'An open' if needle.tip == 'open' else 'A side-vented'} needle stays this far short of the end."
        short_by = (end, ("short by", short.value, "mm"))
        yield rationale("needle.ceiling_mm", rule, short_by, (short,), _stop(ceiling, depth.ceiling_mm))
    low = about.figures.row("needle.low_share")
    rule = (
        "Short by a clearance of where the canal is no wider than the needle: its narrow side, as narrow as few of its "
        "kind are, or what has stood in it where that is wider. Never past the ceiling; the widest of the gauge counts."
    )
    entered = (end, ("outside diameter", wide.value, "mm"), ("clearance", clearance.value, "mm"))
    now = [("needle.begins_mm", "At first", depth.begins_mm or 0.0)]
    now += [(f"needle.now.{n}.at_most_mm", f"After {each.after}", each.at_most_mm) for n, each in enumerate(depth.now)]
    for (of, when, at_most_mm), free_mm in zip(now, about.planned.grounds.needle_free_mm, strict=True):
        free = length("free down to", free_mm) - _row("clearance", clearance)
        below_orifice = no_less(free, length("orifice", about.canal.orifice_mm))
        stop = _stop(no_more(below_orifice, length("ceiling", depth.ceiling_mm)), at_most_mm)
        yield rationale(of, f"{when}: {rule}", entered, (wide, clearance, low), stop)
    if depth.first_at_ceiling is not None:
        rule = "The first instrument that at the end of the canal leaves room for the needle at its ceiling."
        yield rationale("needle.first_at_ceiling", rule, (("outside diameter", wide.value, "mm"),), (wide, clearance))
    yield from _irrigants(about)


def _irrigants(about: RationaleContext) -> Iterator[Rationale]:
    if not about.plan.irrigants:
        return
    rows = (about.figures.row("irrigant.between_ml"), about.figures.row("irrigant.rinse_ml"))
    rule = "After every instrument and for every final rinse on the expected path, added up."
    per = tuple((row.says.rstrip(".").lower(), row.value, "ml") for row in rows)
    calculations = []
    for total in about.plan.irrigants:
        volumes = Counter(step.volume_ml for step in about.planned.steps if step.irrigant == total.irrigant)
        times = [
            known(f"times {ml:g} ml", count, "") * known(f"{ml:g} ml", ml, "ml")
            for ml, count in volumes.items()
            if ml is not None
        ]
        calculations.append(comes_to(added(times), total.volume_ml, "ml", Rounding.HUNDREDTH))
    yield rationale("irrigants", rule, per, rows, *calculations)
