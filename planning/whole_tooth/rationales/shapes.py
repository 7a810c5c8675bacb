"""Why a canal is made as wide as it is, and what follows from its shape."""

from __future__ import annotations

from collections.abc import Iterator

from planning.anatomy import walls
from planning.contract.plan_value import Rationale, SizeReason
from planning.foundation.tables import Figure
from planning.instruments.iso_3630 import HUNDREDTH_MM
from planning.whole_tooth.rationales.about import Entry, RationaleContext, rationale

OVAL = (
    " This canal is oval and counted as if it were as narrow all round: a round instrument touches its two near walls "
    "alone and may go deeper than is said."
)


def size_rationales(about: RationaleContext) -> Iterator[Rationale]:
    advised = about.plan.size_range
    for bound, rule in (
        ("least", "The largest of what asks for more."),
        ("most", "The smallest of what asks for less."),
    ):
        reasons = [each for each in advised.reasons if each.bound == bound]
        entered = tuple((each.code, float(each.size or 0), "size") for each in reasons)
        yield rationale(f"size_range.{bound}", rule, entered, _rows_of(reasons))
    bounds = (("least", float(advised.least), "size"), ("most", float(advised.most), "size"))
    proposed = None if advised.proposed is None else float(advised.proposed)
    rule = "The least of the advised range." if proposed else "None: the least lies above the most, a wide canal."
    yield rationale("size_range.proposed", rule, bounds)
    yield rationale("final_size", _size_rule(about), (("proposed", proposed, "size"),))
    at_wall = [each for each in advised.reasons if each.code == "wall-contact"]
    if any(option.wall_share is not None for option in advised.options):
        rule = "Share of an elliptic canal's wall that a round preparation reaches at the end, centred in it."
        yield rationale("size_range.options.wall_share", rule, (), _rows_of(at_wall))
    wall = about.canal.size_asked.wall
    if wall is not None:
        rule = "The wall less all that this size would widen the canal by there."
        entered = (
            ("wall before", wall.wall.thickness_mm, "mm"),
            ("canal there", round(wall.canal_mm, walls.DIGITS), "mm"),
        )
        yield rationale("size_range.options.wall_left_mm", rule, entered, wall.wall.rows)
    if any(option.strain_pct is not None for option in advised.options):
        rule = "Its diameter where the canal bends over twice the radius, the tip at the end."
        radius = ("radius", about.canal.input.curve_radius_mm, "mm")
        yield rationale("size_range.options.strain_pct", rule, (radius,), _taken(about))


def _taken(about: RationaleContext) -> tuple[Figure, ...]:
    """Rows that stand for what is not charted of a curve."""
    curve = about.canal.input
    placed = curve.curve_from_end_mm is not None or curve.curve_start_mm is not None
    keys = (("strain.radius", curve.curve_radius_mm is not None), ("strain.from_end", placed))
    return tuple(about.figures.row(key) for key, charted in keys if not charted)


def _size_rule(about: RationaleContext) -> str:
    """How the final size came to be what it is."""
    size, proposed = about.plan.final_size, about.plan.size_range.proposed
    if size is None:
        return "None yet: in a wide canal a supervisor chooses it."
    if size == proposed:
        return "As proposed: the least of the advised range."
    return "Chosen by hand." if proposed is not None else "Chosen for a wide canal, where none is proposed."


def _rows_of(reasons: list[SizeReason]) -> tuple[str, ...]:
    return tuple(each.row for each in reasons)


def shape_rationales(about: RationaleContext) -> Iterator[Rationale]:
    yield rationale("outline", "The widest of all that stands at a known stop, each as wide as ISO 3630-1 names it.")
    if about.plan.strain:
        rows = (about.figures.row("strain.medium_pct"), about.figures.row("strain.high_pct"))
        rule = "Diameter where the canal bends over twice the radius, the tip at its stop. For ranking, never for life."
        entered: tuple[Entry, ...] = (
            ("radius", about.canal.input.curve_radius_mm, "mm"),
            ("bend from the end", about.canal.input.curve_from_end_mm, "mm"),
            ("curve begins", about.canal.input.curve_start_mm, "mm"),
            *((f"from here on {name}", row.value, "%") for name, row in zip(("medium", "high"), rows, strict=True)),
        )
        yield rationale("strain", rule, entered, (*rows, *_taken(about)))
    if about.plan.wall is not None and about.canal.size_asked.wall is not None:
        limits = (about.figures.row("wall.caution"), about.figures.row("wall.stop"))
        entered = (
            ("wall before", about.plan.wall.before_mm, "mm"),
            ("canal there", about.plan.wall.canal_mm, "mm"),
            ("prepared there", about.plan.wall.prepared_mm, "mm"),
            ("caution below", limits[0].value, "mm"),
            ("no shaping below", limits[1].value, "mm"),
        )
        rows_: tuple[Figure | str, ...] = (*about.canal.size_asked.wall.wall.rows, *limits)
        rule = "The wall less half of what the canal has grown by there."
        yield rationale("wall.centred_mm", rule, entered, rows_)
        rule = "The wall less all of what the canal has grown by there: the preparation drifts to this side."
        yield rationale("wall.worst_mm", rule, entered, rows_)


def filling_rationales(about: RationaleContext) -> Iterator[Rationale]:
    filled = about.plan.obturation
    if filled is None:
        return
    keys = ("length", "small_upto", "tolerance_small", "tolerance_large", "tolerance_tool", "seats_within")
    tolerances = tuple(about.figures.row(f"filling.{key}") for key in keys)
    if filled.rests:
        rule = "The deepest place where it is nowhere wider than the prepared canal; earliest: as wide as it may be."
        yield rationale("obturation.rests", rule, (), tolerances)
    shape = (
        ("final size", (about.plan.final_size or 0) * HUNDREDTH_MM, "mm"),
        ("final taper", about.plan.final_taper * HUNDREDTH_MM, "mm/mm"),
    )
    rule = "The kit's cone of the final size and taper, else the one that rests nearest to the end, within tolerance."
    yield rationale("obturation.master_cone", rule, shape, tolerances)
    rule = (
        "From the orifice to the end: the canal as wide and as narrow as it was, an ellipse, together with the round "
        "shape that instruments have left in its middle; a cone is round."
    )
    for part in ("before_mm3", "prepared_mm3", "cone_mm3", "to_fill_mm3"):
        if getattr(filled.volumes, part) is not None:
            yield rationale(f"obturation.volumes.{part}", rule, (("canal's end", about.plan.end_mm, "mm"),))


def estimate_rationales(about: RationaleContext) -> Iterator[Rationale]:
    if about.plan.expectation is None:
        return
    rows = tuple(about.figures.row(f"depth.{key}") for key in ("limit", "overcut", "strokes"))
    entered = tuple((row.key.removeprefix("depth."), row.value, row.unit) for row in rows)
    rule = (
        "An estimate for teaching: light touch stops where the cross-section that is cut reaches a limit; "
        "each stroke leaves a little more room. What the hand feels wins."
    )
    if any(point.wide_mm > point.narrow_mm for point in about.plan.expectation.initial_shape.points):
        rule += OVAL
    yield rationale("expectation.steps", rule, entered, rows)
    widths = about.canal.widths
    rule = f"Widths from {about.plan.expectation.initial_shape.source}; straight between the levels that are known."
    yield rationale("expectation.initial_shape", rule, (), () if widths is None else widths.rows)
    if about.plan.expectation.samples:
        rule = "A tenth of the canals drawn from the published spreads rests higher, a tenth deeper."
        drawn = (("canals drawn", float(about.plan.expectation.samples), ""),)
        yield rationale("expectation.steps.low_mm", rule, drawn, rows)
        yield rationale("expectation.steps.high_mm", rule, drawn, rows)
        yield rationale(
            "expectation.steps.reach_share", "Share of the canals drawn in which it is at its stop.", drawn, rows
        )
    if about.plan.expectation.series_passes is not None:
        yield rationale(
            "expectation.series_passes",
            "Passes of the estimate until the smallest of the series is at length.",
            entered,
            rows,
        )
