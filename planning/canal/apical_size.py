"""How large the end of a canal is made: a range with its reasons, never a bare number.

The range for a student is the cautious one. Its least size is the largest that anything asks for: a floor, the
irrigant, the canal's own width at its end, the first size to bind, the beginning of the more cautious of two published
schools. Its greatest size is the smallest that anything allows: the end of that school's range, a curve, the thinnest
wall. Whatever else is known is told beside it. Where the least is above the greatest the canal is a wide one: no size
is proposed, and a supervisor chooses.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from planning.anatomy import like, ovals
from planning.anatomy.walls import ThinWall
from planning.contract.plan_input import WIDE_CANAL
from planning.contract.plan_value import SizeRange, SizeReason
from planning.foundation import tables
from planning.foundation.quantities import hundredth_below
from planning.foundation.tables import Figure, Figures
from planning.instruments.iso_3630 import HUNDREDTH_MM, size_above, sizes
from planning.techniques.technique import Setting

APART_MM = 1e-9  # rounding error of doubles


@dataclass(frozen=True, slots=True, kw_only=True)
class ApicalEnd:
    """How wide the canal is, before anything has been in it, where its preparation ends."""

    narrow_mm: float
    wide_mm: float
    source: str = "measured"
    know: str = "read"
    rows: tuple[str, str] = ("", "")
    """Keys of the figures that the narrow and the wide side rest on; empty where they were measured."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WallAbove:
    """The thinnest wall, with how wide the canal was there: what a final size leaves of the wall follows from both."""

    wall: ThinWall
    canal_mm: float
    """How wide the canal was there."""
    from_end_mm: float

    def width_mm(self, size: int, taper: int) -> float:
        """How wide a final size makes the canal at the wall."""
        return max(self.canal_mm, (size + taper * self.from_end_mm) * HUNDREDTH_MM)

    def worst_mm(self, size: int, taper: int) -> float:
        """Wall [mm] that a final size leaves where the preparation drifts to its side all the way."""
        return hundredth_below(self.wall.thickness_mm - (self.width_mm(size, taper) - self.canal_mm))


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeRequest:
    """What decides the final size of one canal."""

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
    end: ApicalEnd | None = None
    """None where nobody measured it and its widths are not known: then the published foramen stands for it."""
    wall: WallAbove | None = None

    @property
    def binder_counts(self) -> bool:
        """Whether a first binder is known that can be it: a size that had been loose before cannot."""
        return self.first_binder is not None and (self.loose is None or self.first_binder > self.loose)


def advise(asked: SizeRequest, figures: Figures) -> SizeRange:
    """The range of final sizes for a student, the least of it proposed.

    Where the least lies above the most nothing is proposed, and the reasons say so.
    """
    block = asked.setting is Setting.BLOCK
    lower = list(_of_block(figures) if block else _of_tooth(figures))
    lower += _narrow_end(asked, figures)
    lower += _first_binder(asked, figures)
    schools = _schools(asked)
    lower += _school_begins(schools, figures)
    least = max(r.size for r in lower if r.bound == "least" and r.size is not None)
    upper = list(_school_ends(asked, schools, least, figures))
    upper += _curve(asked, figures)
    upper += _wall(asked, least, figures)
    ceiling = min((r for r in upper if r.bound == "most" and r.size is not None), key=lambda r: r.size or 0)
    most = ceiling.size or least
    reasons = [*lower, *upper]
    # What the canal asks for and what it bears are found apart. Where they cross, a person decides, not a rule.
    wide = most < least
    if wide:
        says = (
            f"It asks for at least {least} and bears at most {most}: a wide canal. No size is proposed, your "
            "supervisor chooses one; a cone fitted to this canal is advised."
        )
        # It rests on what bears least, and so has that reason's source.
        reasons.append(replace(ceiling, code=WIDE_CANAL, bound="tells", says=says))
    reasons += _reached(asked, least, figures)
    return SizeRange(least=least, most=most, proposed=None if wide else least, reasons=tuple(reasons))


def end_of(asked: SizeRequest, figures: Figures) -> ApicalEnd | None:
    """The canal's end, else the published foramen; None where neither is known."""
    if asked.end is not None:
        return asked.end
    row = None if asked.setting is Setting.BLOCK else tables.row_for("foramina", like(asked.tooth_iso), asked.canal)
    if row is None:
        return None
    narrow, wide = (figures.cell("foramina", row, column) for column in ("narrow_mm", "wide_mm"))
    return ApicalEnd(
        narrow_mm=narrow.value,
        wide_mm=wide.value,
        source=narrow.source,
        know=narrow.know,
        rows=(narrow.key, wide.key),
    )


# --- what asks for more ------------------------------------------------------------------------------------------


def _of_block(figures: Figures) -> Iterator[SizeReason]:
    tip, up = figures.count("final.block_tip"), figures.row("final.above_block_tip")
    size = size_above(tip, int(up.value)) or tip
    says = f"At least {size}: {int(up.value)} sizes above the block's own end of {tip} (common practice)."
    yield _least("block-end", size, says, up)


def _of_tooth(figures: Figures) -> Iterator[SizeReason]:
    for code, key, why in (
        ("floor", "final.floor", "the floor for every canal"),
        ("irrigation-floor", "final.irrigation", "below it the irrigant does not get to the end"),
    ):
        row = figures.row(key)
        yield _least(code, int(row.value), f"At least {row.value:g}: {why} ({key}).", row)


def _narrow_end(asked: SizeRequest, figures: Figures) -> Iterator[SizeReason]:
    """The first size that cuts at the canal's end: its tip is wider than the canal is narrow there."""
    end = end_of(asked, figures)
    if end is None:
        says = "How wide this canal is at its end is published nowhere here."
        yield _tells("end-unknown", None, says, figures.row("final.floor"))
        return
    size = _first_above(end.narrow_mm)
    measured = not end.rows[0]
    how = "was measured" if measured else "is on average"
    whence = "" if measured else f" ({end.source}, {end.know})"
    says = (
        f"At least {size}: the canal's end {how} {end.narrow_mm:.2f} mm narrow{whence}, and a smaller tip cuts nothing."
    )
    yield SizeReason(
        code="narrow-end", bound="least", size=size, says=says, row=end.rows[0], source=end.source, know=end.know
    )


def _first_binder(asked: SizeRequest, figures: Figures) -> Iterator[SizeReason]:
    if asked.first_binder is None:
        return
    up = figures.row("final.above_first_binder")
    if not asked.binder_counts:
        says = (
            f"Size {asked.first_binder} was recorded as the first to bind, but {asked.loose} had been loose at the end "
            "before: it cannot be. Gauge again; it does not count."
        )
        yield _tells("first-binder-loose", asked.first_binder, says, up)
        return
    size = _above(asked.first_binder, up)
    says = f"At least {size}: the next size above {asked.first_binder}, the first to bind after flaring ({_cited(up)})."
    yield _least("first-binder", size, says, up)
    # The old rule is told, and binds nothing.
    three = figures.row("final.plus_three")
    size = _above(asked.first_binder, three)
    says = f"{int(three.value)} sizes above the first to bind would be {size} ({_cited(three)})."
    yield _tells("first-binder-three", size, says, three)


def _above(size: int, up: Figure) -> int:
    return size_above(size, int(up.value)) or sizes()[-1]


def _first_above(width_mm: float) -> int:
    """The first size whose tip is wider than that; the largest size where none is."""
    return next((size for size in sizes() if size * HUNDREDTH_MM > width_mm + APART_MM), sizes()[-1])


def _covering(width_mm: float) -> int:
    """The first size that is at least so wide; the largest size where none is."""
    # Unlike above, a size exactly as wide will do: it touches the wall all round.
    return next((size for size in sizes() if size * HUNDREDTH_MM >= width_mm - APART_MM), sizes()[-1])


def _schools(asked: SizeRequest) -> tuple[Mapping[str, str], ...]:
    """The published ranges of this canal, the more cautious first; empty where there are none."""
    if asked.setting is Setting.BLOCK:
        return ()
    tooth = like(asked.tooth_iso)
    ranges = (
        row for row in tables.rows("final_sizes") if row["tooth"] == tooth and asked.canal in row["canals"].split()
    )
    # The more cautious of two schools is the one that ends lower.
    return tuple(sorted(ranges, key=lambda row: int(row["most_size"])))


def _school_begins(schools: Sequence[Mapping[str, str]], figures: Figures) -> Iterator[SizeReason]:
    if schools:
        begins = _of_school(figures, schools[0], "least_size")
        says = f"At least {begins.value:g}: where the more cautious of two published ranges begins ({_cited(begins)})."
        yield _least("published-lower", int(begins.value), says, begins)


# --- what asks for less ------------------------------------------------------------------------------------------


def _school_ends(
    asked: SizeRequest, schools: Sequence[Mapping[str, str]], least: int, figures: Figures
) -> Iterator[SizeReason]:
    if not schools:
        block = "a training block has no anatomy to go by"
        none = f"no range is published for canal {asked.canal} of this tooth"
        reason = block if asked.setting is Setting.BLOCK else none
        up = figures.row("final.unpublished_up")
        size = size_above(least, int(up.value)) or sizes()[-1]
        says = f"At most {size}: {int(up.value)} sizes above the least, as {reason} (common practice)."
        yield replace(_tells("unpublished", size, says, up), bound="most")
        return
    lower, wider = schools
    most = _of_school(figures, lower, "most_size")
    says = f"At most {most.value:g}: the lower of two published upper bounds ({_cited(most)})."
    yield replace(_tells("published-upper", int(most.value), says, most), bound="most")
    from_size, to_size = (_of_school(figures, wider, column) for column in ("least_size", "most_size"))
    says = f"The wider school prepares {from_size.value:g} to {to_size.value:g} ({_cited(to_size)})."
    yield _tells("published-wider", int(to_size.value), says, to_size)


def _of_school(figures: Figures, row: Mapping[str, str], column: str) -> Figure:
    return figures.cell("final_sizes", row, column, row["tooth"], row["canals"], row["source"])


def _curve(asked: SizeRequest, figures: Figures) -> Iterator[SizeReason]:
    deg = asked.curvature_deg
    if deg is None:
        return
    kind = None
    # Severe is above its angle, moderate from its angle on, as their rows say.
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


def _wall(asked: SizeRequest, least: int, figures: Figures) -> Iterator[SizeReason]:
    """The largest size that leaves enough wall at worst, as a bound. Where not even the least size does, the taper is
    to blame.
    """
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
    # Where even the largest size leaves enough of it, the wall is no reason.
    elif fit[-1] < sizes()[-1]:
        says = (
            f"Not above {fit[-1]} with a taper of .{asked.taper:02d}: a larger one may leave less than "
            f"{limit.value:g} mm of the thinnest wall {where} ({whence})."
        )
        yield replace(_tells("wall-ceiling", fit[-1], says, limit), bound="most")


# --- what is told beside it --------------------------------------------------------------------------------------


def _reached(asked: SizeRequest, proposed: int, figures: Figures) -> Iterator[SizeReason]:
    end = end_of(asked, figures)
    # Of a round end a size reaches all of the wall or none of it: there is no share to tell.
    if end is None or end.wide_mm <= end.narrow_mm:
        return
    share = ovals.reached_share(end.narrow_mm, end.wide_mm, proposed * HUNDREDTH_MM)
    whole = _covering(end.wide_mm)
    says = (
        f"The end is {end.wide_mm:.2f} mm across its wide side: size {proposed} reaches {share:.0%} of its wall, "
        f"{whole} all of it."
    )
    yield SizeReason(
        code="wall-contact", bound="tells", size=whole, says=says, row=end.rows[1], source=end.source, know=end.know
    )


def _least(code: str, size: int, says: str, figure: Figure) -> SizeReason:
    return replace(_tells(code, size, says, figure), bound="least")


def _tells(code: str, size: int | None, says: str, figure: Figure) -> SizeReason:
    return SizeReason(
        code=code, bound="tells", size=size, says=says, row=figure.key, source=figure.source, know=figure.know
    )


def _cited(figure: Figure) -> str:
    return f"{figure.source}, {figure.know}"
