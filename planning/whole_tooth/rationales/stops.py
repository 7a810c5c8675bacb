"""Why instruments and the needle are stopped where they are."""

from __future__ import annotations

from collections.abc import Iterator

from planning.anatomy import like
from planning.contract.plan_value import Rationale
from planning.foundation import tables
from planning.foundation.tables import Figure
from planning.techniques.technique import PhaseKind, Setting
from planning.whole_tooth.rationales.about import Entry, RationaleContext, rationale
from planning.work.irrigation import outside


def stop_rationales(about: RationaleContext) -> Iterator[Rationale]:
    """Under `stops.` and the kind of stop, as the stop table names it, or the target, as a step of the order of work
    has it: full, end, coronal, make_room, step_back; to_length, to_resistance."""
    if about.plan.end_mm is None:
        return
    length = ("working length", about.plan.length.working_length_mm, "mm")
    yield rationale(
        "stops.full", "To the working length, rounded down to half a millimetre, and never beyond it.", (length,)
    )
    yield from _end(about, length)
    yield _coronal(about)
    less = about.figures.row("make_room.less")
    rule = "Larger instruments that make room stay short of where the smaller one stopped, and of the canal's end."
    yield rationale(
        "stops.make_room", rule, (("short by", less.value, "mm"), ("canal's end", about.plan.end_mm, "mm")), (less,)
    )
    per = about.figures.row("final.above_short")
    rule = "Larger than the final size: this far short of the end for every size above it, and never nearer than that."
    entered = (
        ("final size", about.plan.final_size, "size"),
        ("short by, for each size", per.value, "mm"),
        ("at least", less.value, "mm"),
        ("canal's end", about.plan.end_mm, "mm"),
    )
    yield rationale("stops.above_final", rule, entered, (per, less))
    for phase in about.plan_input.technique.phases:
        if phase.kind is PhaseKind.STEP_BACK:
            rule = "Each larger size one step of the technique shorter than the one before."
            yield rationale(
                "stops.step_back", rule, (("step", phase.step_mm, "mm"), ("canal's end", about.plan.end_mm, "mm"))
            )


def _end(about: RationaleContext, length: Entry) -> Iterator[Rationale]:
    junction = about.canal.input.junction
    if about.plan.junction_mm is None or junction is None:
        rule = "The canal runs to its own end: its deepest stop is that of the working length."
        yield rationale("end_mm", rule, (length,))
        yield from _to_the_end(rule, (length,))
        return
    at = junction.at_length_mm if junction.at_length_mm is not None else about.plan.length.working_length_mm
    entered = (
        ("length when it was measured", at, "mm"),
        ("junction from the terminus", junction.from_terminus_mm, "mm"),
    )
    rule = f"The canal meets {about.plan.joins}: its length when the junction was measured, less the distance found."
    yield rationale("junction_mm", rule, entered)
    rule = f"It joins {about.plan.joins}: nothing passes the junction once it is known. Rounded down."
    yield rationale("end_mm", rule, entered)
    yield from _to_the_end(rule, entered)


def _to_the_end(rule: str, entered: tuple[Entry, ...]) -> Iterator[Rationale]:
    yield rationale("stops.end", rule, entered)
    yield rationale("stops.to_length", rule, entered)
    yield rationale("stops.to_resistance", f"No push: it may rest short of this, and goes no deeper. {rule}", entered)


def _coronal(about: RationaleContext) -> Rationale:
    if about.plan_input.setting is Setting.BLOCK:
        grip = about.figures.row("instrument.stop_and_grip")
        rule = "In a training block as deep as the shortest coronal instrument reaches with its stop on."
        return rationale("stops.coronal", rule, (("stop and grip", grip.value, "mm"),), (grip,))
    thirds, before = about.figures.row("coronal.thirds"), about.figures.row("coronal.before_curve")
    rule = "To the end of the canal's coronal part, rounded down; short of a curve that begins above that."
    entered: tuple[Entry, ...] = (
        ("orifice", about.canal.orifice_mm, "mm"),
        ("working length", about.plan.length.stop_mm, "mm"),
        ("parts of the canal", thirds.value, ""),
        ("curve begins", about.canal.input.curve_start_mm, "mm"),
        ("short of the curve by", None if about.canal.input.curve_start_mm is None else before.value, "mm"),
    )
    return rationale("stops.coronal", rule, entered, (thirds, before, *_crown(about)))


def _crown(about: RationaleContext) -> tuple[Figure, ...]:
    """The row that the orifice comes from where nobody measured it."""
    if about.canal.input.orifice_mm is not None or about.plan_input.setting is Setting.BLOCK:
        return ()
    crowns = (row for row in tables.rows("crowns") if row["tooth"] == like(about.tooth_iso))
    return tuple(about.figures.cell("crowns", row, "crown_mm", row["tooth"]) for row in crowns)


def needle_rationales(about: RationaleContext) -> Iterator[Rationale]:
    if about.plan.needle is None or about.plan.end_mm is None:
        return
    needle = about.plan_input.choices.needle
    short, clearance = about.figures.row(f"needle.short_{needle.tip}"), about.figures.row("needle.clearance")
    wide = outside(needle, about.figures)
    end = ("canal's end", about.plan.end_mm, "mm")
    if about.canal.join is not None and about.canal.join.junction_um is None:
        rule = "Where the canal joins is not known: no deeper than its coronal part."
        yield rationale("needle.ceiling_mm", rule, (end,), (about.figures.row("coronal.thirds"),))
    else:
        rule = f"{'An open' if needle.tip == 'open' else 'A side-vented'} needle stays this far short of the end."
        yield rationale("needle.ceiling_mm", rule, (end, ("short by", short.value, "mm")), (short,))
    low = about.figures.row("needle.low_share")
    rule = (
        "Short by a clearance of where the canal is no wider than the needle: its narrow side, as narrow as few of its "
        "kind are, or what has stood in it where that is wider. Never past the ceiling; the widest of the gauge counts."
    )
    entered = (end, ("outside diameter", wide.value, "mm"), ("clearance", clearance.value, "mm"))
    if about.plan.needle.begins_mm is not None:
        yield rationale("needle.begins_mm", f"At first: {rule}", entered, (wide, clearance, low))
    for number, now in enumerate(about.plan.needle.now):
        yield rationale(
            f"needle.now.{number}.at_most_mm", f"After {now.after}: {rule}", entered, (wide, clearance, low)
        )
    if about.plan.needle.first_at_ceiling is not None:
        rule = "The first instrument that at the end of the canal leaves room for the needle at its ceiling."
        yield rationale("needle.first_at_ceiling", rule, (("outside diameter", wide.value, "mm"),), (wide, clearance))
    if about.plan.irrigants:
        rows = (about.figures.row("irrigant.between_ml"), about.figures.row("irrigant.rinse_ml"))
        rule = "After every instrument and for every final rinse on the expected path, added up."
        per = tuple((row.says.rstrip(".").lower(), row.value, "ml") for row in rows)
        yield rationale("irrigants", rule, per, rows)
