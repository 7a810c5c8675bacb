"""Why a canal is made as wide as it is, and what follows from its shape."""

from __future__ import annotations

from collections.abc import Iterator
from math import isclose

from planning.anatomy import walls
from planning.anatomy.walls import WallLeft
from planning.canal.apical_size import WallAbove
from planning.canal.prepared_shape import width_at
from planning.contract.plan_value import SizeReason
from planning.contract.rationale import Calculation, Rationale, Rounding
from planning.foundation.quantities import HUNDREDTHS_PER_MM
from planning.foundation.tables import Figure
from planning.instruments.iso_3630 import HUNDREDTH_MM, diameter_mm
from planning.whole_tooth.rationales.about import Entry, RationaleContext, rationale
from planning.whole_tooth.rationales.terms import Term, comes_to, known, least, most, no_less

OVAL = (
    " This canal is oval and counted as if it were as narrow all round: a round instrument touches its two near walls "
    "alone and may go deeper than is said."
)


def size_rationales(about: RationaleContext) -> Iterator[Rationale]:
    advised = about.plan.size_range
    for bound, size, rule, outermost in (
        ("least", advised.least, "The largest of what asks for more.", most),
        ("most", advised.most, "The smallest of what asks for less.", least),
    ):
        reasons = [each for each in advised.reasons if each.bound == bound]
        entered = tuple((each.code, float(each.size or 0), "size") for each in reasons)
        asked = outermost(*(known(each.code.replace("-", " "), each.size or 0, "size") for each in reasons))
        yield rationale(f"size_range.{bound}", rule, entered, _rows_of(reasons), comes_to(asked, size, "size"))
    bounds = (("least", float(advised.least), "size"), ("most", float(advised.most), "size"))
    proposed = None if advised.proposed is None else float(advised.proposed)
    rule = "The least of the advised range." if proposed else "None: the least lies above the most, a wide canal."
    yield rationale("size_range.proposed", rule, bounds)
    yield rationale("final_size", _size_rule(about), (("proposed", proposed, "size"),))
    yield from _option_rationales(about)


def _option_rationales(about: RationaleContext) -> Iterator[Rationale]:
    options, wall, taper = about.plan.size_range.options, about.canal.size_asked.wall, about.canal.size_asked.taper
    at_wall = [each for each in about.plan.size_range.reasons if each.code == "wall-contact"]
    if any(option.wall_share is not None for option in options):
        rule = "Share of an elliptic canal's wall that a round preparation reaches at the end, centred in it."
        yield rationale("size_range.options.wall_share", rule, (), _rows_of(at_wall))
    if wall is not None:
        rule = "The wall less all that this size would widen the canal by there."
        before, there = _before(wall)
        entered = (("wall before", before.value, "mm"), ("canal there", round(there.value, walls.DIGITS), "mm"))
        lefts = [
            comes_to(
                before - no_less(_width(option.size, taper, wall.from_end_mm) - there, 0),
                option.wall_left_mm or 0.0,
                "mm",
                Rounding.HUNDREDTH_DOWN,
            )
            for option in options
        ]
        yield rationale("size_range.options.wall_left_mm", rule, entered, wall.wall.rows, *lefts)
    bend, end_mm = about.planned.grounds.bend, about.plan.end_mm or 0.0
    if bend is not None and any(option.strain_pct is not None for option in options):
        rule = "Its diameter where the canal bends over twice the radius, the tip at the end."
        strains = [
            comes_to(
                _hundredths(option.size, taper, end_mm - bend.at_mm) / (known("radius", bend.radius_mm, "mm") * 2),
                option.strain_pct or 0.0,
                "%",
                Rounding.HUNDREDTH,
            )
            for option in options
        ]
        radius = ("radius", about.canal.input.curve_radius_mm, "mm")
        yield rationale("size_range.options.strain_pct", rule, (radius,), _taken(about), *strains)


def _before(wall: WallAbove) -> tuple[Term, Term]:
    """The wall before anything was in the canal, and how wide the canal was there."""
    return known("wall before", wall.wall.thickness_mm, "mm"), known("canal there", wall.canal_mm, "mm")


def _hundredths(size: int, taper: int, from_tip_mm: float) -> Term:
    """How thick an instrument is at a distance from its tip, in hundredths of a millimetre (ISO 3630-1)."""
    return known("size", size, "0.01 mm") + known("taper", taper, "0.01 mm/mm") * known(
        "from the tip", from_tip_mm, "mm"
    )


def _width(size: int, taper: int, from_tip_mm: float) -> Term:
    return _hundredths(size, taper, from_tip_mm) / HUNDREDTHS_PER_MM


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
        yield rationale("strain", rule, entered, (*rows, *_taken(about)), *_strains(about))
    if about.plan.wall is not None and about.canal.size_asked.wall is not None:
        yield from _wall_rationales(about, about.canal.size_asked.wall, about.plan.wall)


def _strains(about: RationaleContext) -> Iterator[Calculation]:
    bend = about.planned.grounds.bend
    if bend is None:
        return
    for strain, (instrument, tip_mm) in zip(about.plan.strain, about.planned.grounds.bent_mm.items(), strict=True):
        from_tip_mm = tip_mm - bend.at_mm
        thick = _hundredths(instrument.size, instrument.taper, from_tip_mm)
        own_mm = diameter_mm(instrument, from_tip_mm)
        # A taper that varies, or that ends below the bend, is not told by size and taper.
        if not isclose(thick.value * HUNDREDTH_MM, own_mm):
            thick = known("diameter there", own_mm, "mm") * HUNDREDTHS_PER_MM
        bent = thick / (known("radius", bend.radius_mm, "mm") * 2)
        yield comes_to(bent, strain.strain_pct, "%", Rounding.HUNDREDTH)


def _wall_rationales(about: RationaleContext, above: WallAbove, wall: WallLeft) -> Iterator[Rationale]:
    limits = (about.figures.row("wall.caution"), about.figures.row("wall.stop"))
    entered = (
        ("wall before", wall.before_mm, "mm"),
        ("canal there", wall.canal_mm, "mm"),
        ("prepared there", wall.prepared_mm, "mm"),
        ("caution below", limits[0].value, "mm"),
        ("no shaping below", limits[1].value, "mm"),
    )
    rows: tuple[Figure | str, ...] = (*above.wall.rows, *limits)
    before, there = _before(above)
    prepared_mm = width_at(about.planned.grounds.outline, above.wall.at_mm) or 0.0
    grown = no_less(known("prepared there", prepared_mm, "mm") - there, 0)
    rule = "The wall less half of what the canal has grown by there."
    centred = comes_to(before - grown / 2, wall.centred_mm, "mm", Rounding.HUNDREDTH_DOWN)
    yield rationale("wall.centred_mm", rule, entered, rows, centred)
    rule = "The wall less all of what the canal has grown by there: the preparation drifts to this side."
    worst = comes_to(before - grown, wall.worst_mm, "mm", Rounding.HUNDREDTH_DOWN)
    yield rationale("wall.worst_mm", rule, entered, rows, worst)


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
