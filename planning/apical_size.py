"""How large the end of a canal is made: a range with its reasons, never a bare number.

For a student the range is the cautious one: up from the largest of what asks for more (a floor, the irrigant, the
narrow foramen, the first size to bind), to the smallest of what asks for less (the lower of two published upper
bounds, a curve, the thinnest wall). What else there is to know is told beside it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from planning import ovals, tables
from planning.instruments import HUNDREDTH_MM, size_above, sizes
from planning.plan_value import SizeRange, SizeReason
from planning.tables import Figure, Figures
from planning.techniques import Setting
from planning.teeth import like
from planning.walls import ThinWall

DIGITS = 3  # whole micrometres: finer than any wall is measured, and rid of what doubles leave


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """The canal's end before anything has been in it."""

    narrow_mm: float
    wide_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class WallAbove:
    """The thinnest wall, as the final size sees it."""

    wall: ThinWall
    canal_mm: float
    """How wide the canal was there."""
    from_end_mm: float

    def width_mm(self, size: int, taper: int) -> float:
        """How wide a final size makes the canal at the wall."""
        return max(self.canal_mm, (size + taper * self.from_end_mm) * HUNDREDTH_MM)

    def worst_mm(self, size: int, taper: int) -> float:
        """What a final size leaves of it where the preparation drifts to its side all the way."""
        return round(self.wall.thickness_mm - (self.width_mm(size, taper) - self.canal_mm), DIGITS)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What the final size of one canal hangs on."""

    tooth_iso: str
    canal: str
    setting: Setting
    taper: int
    """Of the final instrument."""
    curvature_deg: float | None = None
    first_binder: int | None = None
    """First size that bound at the end, gauged after coronal flaring."""
    loose: int | None = None
    """Largest size known to have been loose at the end before it was gauged."""
    measured: End | None = None
    """In place of the published foramen."""
    wall: WallAbove | None = None


def advise(asked: Asked, figures: Figures) -> SizeRange:
    """The range of final sizes for a student, the least of it proposed.

    Where the upper bound lies below the lower one, it wins: both bounds are the upper, and the reasons say so.
    """
    block = asked.setting is Setting.BLOCK
    lower = list(_of_block(figures) if block else _of_tooth(asked, figures))
    lower += _first_binder(asked, figures)
    least = max(r.size for r in lower if r.bound == "least" and r.size is not None)
    upper = list(_published(asked, least, figures))
    upper += _curve(asked, figures)
    upper += _wall(asked, least, figures)
    ceiling = min((r for r in upper if r.bound == "most" and r.size is not None), key=lambda r: r.size or 0)
    most = ceiling.size or least
    reasons = [*lower, *upper]
    if most < least:
        says = (
            f"The upper bound of {most} lies below the {least} that the lower one asks for: "
            f"{most} stands, and your supervisor decides whether it is enough."
        )
        reasons.append(replace(ceiling, code="bounds-cross", bound="tells", says=says))
        least = most
    reasons += _reached(asked, least, figures)
    return SizeRange(least=least, most=most, proposed=least, reasons=tuple(reasons))


def end_of(asked: Asked, figures: Figures) -> tuple[End, tuple[Figure, ...]] | None:
    """The canal's end, measured or published, and the rows of the latter; None where neither is known."""
    if asked.measured is not None:
        return asked.measured, ()
    if asked.setting is Setting.BLOCK:
        tip = figures.row("final.block_tip")
        return End(narrow_mm=tip.value * HUNDREDTH_MM, wide_mm=tip.value * HUNDREDTH_MM), (tip,)
    row = tables.row_for("foramina", like(asked.tooth_iso), asked.canal)
    if row is None:
        return None
    narrow, wide = (figures.cell("foramina", row, column) for column in ("narrow_mm", "wide_mm"))
    return End(narrow_mm=narrow.value, wide_mm=wide.value), (narrow, wide)


# --- what asks for more ------------------------------------------------------------------------------------------


def _of_block(figures: Figures) -> Iterator[SizeReason]:
    tip, up = figures.count("final.block_tip"), figures.row("final.above_first_binder")
    size = size_above(tip, int(up.value)) or tip
    says = f"At least {size}: {int(up.value)} sizes above the block's own end of {tip} (common practice)."
    yield _least("block-end", size, says, up)


def _of_tooth(asked: Asked, figures: Figures) -> Iterator[SizeReason]:
    for code, key, why in (
        ("floor", "final.floor", "the floor for every canal"),
        ("irrigation-floor", "final.irrigation", "below it the irrigant does not get to the end"),
    ):
        row = figures.row(key)
        yield _least(code, int(row.value), f"At least {row.value:g}: {why} ({key}).", row)
    found = end_of(asked, figures)
    if found is None:
        says = "The foramen of this canal has no published measurement here."
        yield _tells("foramen-unknown", None, says, figures.row("final.floor"))
        return
    end, rows = found
    covering = _covering(end.narrow_mm)
    if rows:
        narrow = f"the narrow foramen measures {end.narrow_mm:.2f} mm on average"
        says = f"At least {covering}: {narrow} ({_cited(rows[0])})."
        yield _least("narrow-foramen", covering, says, rows[0])
    else:
        says = f"At least {covering}: the canal's end was measured {end.narrow_mm:.2f} mm narrow."
        yield SizeReason(
            code="narrow-end", bound="least", size=covering, says=says, row="", source="measured", know="read"
        )


def _first_binder(asked: Asked, figures: Figures) -> Iterator[SizeReason]:
    if asked.first_binder is None:
        return
    up = figures.row("final.above_first_binder")
    if asked.loose is not None and asked.first_binder <= asked.loose:
        says = (
            f"Size {asked.first_binder} was recorded as the first to bind, but {asked.loose} had been loose at the end "
            "before: it cannot be. Gauge again; it does not count."
        )
        yield _tells("first-binder-loose", asked.first_binder, says, up)
        return
    size = size_above(asked.first_binder, int(up.value)) or sizes()[-1]
    says = f"At least {size}: {int(up.value)} sizes above {asked.first_binder}, the first to bind after flaring."
    yield _least("first-binder", size, says, up)


def _covering(width_mm: float) -> int:
    return next((size for size in sizes() if size * HUNDREDTH_MM >= width_mm), sizes()[-1])


# --- what asks for less ------------------------------------------------------------------------------------------


def _published(asked: Asked, least: int, figures: Figures) -> Iterator[SizeReason]:
    tooth = None if asked.setting is Setting.BLOCK else like(asked.tooth_iso)
    ranges = [
        row for row in tables.rows("final_sizes") if row["tooth"] == tooth and asked.canal in row["canals"].split()
    ]
    if not ranges:
        block = "a training block has no anatomy to go by"
        reason = block if tooth is None else f"no range is published for canal {asked.canal} of this tooth"
        up = figures.row("final.unpublished_up")
        size = size_above(least, int(up.value)) or sizes()[-1]
        says = f"At most {size}: {int(up.value)} sizes above the least, as {reason} (common practice)."
        yield replace(_tells("unpublished", size, says, up), bound="most")
        return
    lower, wider = sorted(ranges, key=lambda row: int(row["most_size"]))
    most = _of_school(figures, lower, "most_size")
    says = f"At most {most.value:g}: the lower of two published upper bounds ({_cited(most)})."
    yield replace(_tells("published-upper", int(most.value), says, most), bound="most")
    begins = _of_school(figures, lower, "least_size")
    says = f"The same school begins at {begins.value:g} ({_cited(begins)})."
    yield _tells("published-lower", int(begins.value), says, begins)
    from_size, to_size = (_of_school(figures, wider, column) for column in ("least_size", "most_size"))
    says = f"The wider school prepares {from_size.value:g} to {to_size.value:g} ({_cited(to_size)})."
    yield _tells("published-wider", int(to_size.value), says, to_size)


def _of_school(figures: Figures, row: Mapping[str, str], column: str) -> Figure:
    return figures.cell("final_sizes", row, column, row["tooth"], row["canals"], row["source"])


def _curve(asked: Asked, figures: Figures) -> Iterator[SizeReason]:
    deg = asked.curvature_deg
    if deg is None:
        return
    kind = None
    if deg > figures["final.severe_deg"]:
        kind = "severe"
    elif deg >= figures["final.moderate_deg"]:
        kind = "moderate"
    if kind is None:
        return
    cap, taper = figures.row(f"final.{kind}_cap"), figures.row("final.curve_taper")
    with_taper = f"a taper of .{int(taper.value):02d} or less"
    says = f"Not above {cap.value:g} with {with_taper}: the canal curves by {deg:g}° ({cap.key})."
    yield replace(_tells("curvature-cap", int(cap.value), says, cap), bound="most")
    if asked.taper > taper.value:
        says = f"The series has a taper of .{asked.taper:02d}: in this curve choose {with_taper}."
        yield _tells("curvature-taper", None, says, taper)


def _wall(asked: Asked, least: int, figures: Figures) -> Iterator[SizeReason]:
    """Up to the largest size that leaves enough wall at worst. The taper is to blame where not even the least does."""
    above = asked.wall
    if above is None:
        return
    limit = figures.row("wall.stop")
    where = f"{above.from_end_mm:g} mm from the end"
    whence = "measured" if above.wall.measured else f"{above.wall.source}, {above.wall.know}"
    fit = [size for size in sizes() if size >= least and above.worst_mm(size, asked.taper) >= limit.value]
    if not fit:
        says = (
            f"Even size {least} of taper .{asked.taper:02d} may leave only {above.worst_mm(least, asked.taper):.2f} mm "
            f"of the thinnest wall {where} ({whence}): choose a smaller taper, or your supervisor decides."
        )
        yield _tells("wall-thin", None, says, limit)
    elif fit[-1] < sizes()[-1]:
        says = (
            f"Not above {fit[-1]} with a taper of .{asked.taper:02d}: a larger one may leave less than "
            f"{limit.value:g} mm of the thinnest wall {where} ({whence})."
        )
        yield replace(_tells("wall-ceiling", fit[-1], says, limit), bound="most")


# --- what is told beside it --------------------------------------------------------------------------------------


def _reached(asked: Asked, proposed: int, figures: Figures) -> Iterator[SizeReason]:
    found = end_of(asked, figures)
    if found is None or found[0].wide_mm <= found[0].narrow_mm:
        return
    end, rows = found
    share = ovals.reached_share(end.narrow_mm, end.wide_mm, proposed * HUNDREDTH_MM)
    whole = _covering(end.wide_mm)
    says = (
        f"The end is {end.wide_mm:.2f} mm across its wide side: size {proposed} reaches {share:.0%} of its wall, "
        f"{whole} all of it."
    )
    source, know, row = (rows[1].source, rows[1].know, rows[1].key) if rows else ("measured", "read", "")
    yield SizeReason(code="wall-contact", bound="tells", size=whole, says=says, row=row, source=source, know=know)


def _least(code: str, size: int, says: str, figure: Figure) -> SizeReason:
    return replace(_tells(code, size, says, figure), bound="least")


def _tells(code: str, size: int | None, says: str, figure: Figure) -> SizeReason:
    return SizeReason(
        code=code, bound="tells", size=size, says=says, row=figure.key, source=figure.source, know=figure.know
    )


def _cited(figure: Figure) -> str:
    return f"{figure.source}, {figure.know}"
