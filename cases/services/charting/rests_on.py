"""What was charted of a canal from marked images, and what of it still stands where an image was struck or moved."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from django.db.models import Q

from cases.mapping.markings import in_space_of, measured_of
from cases.models import BendInSpace, Canal, Image, LengthReading, Marking
from cases.models.prepared import Prepared
from planning.anatomy.curvature import BendShape
from planning.contract.canal_facts import as_charted
from planning.radiograph import charted_deg
from planning.radiograph.values import LineMeasured

Facts = dict[str, Any]

_TAKEN = Prepared(
    lambda *canals: (
        LengthReading.objects.filter(canal__in=canals, marking__isnull=False, struck_at=None)
        .select_related("marking__image")
        .order_by("-number")
    )
)
_BENDS = Prepared(
    lambda *canals: (
        BendInSpace.objects.filter(canal__in=canals).select_related("first__image", "second__image").order_by("number")
    )
)


def facts(line: LineMeasured) -> Facts:
    """What a line says of its canal beside the length; a radius only where it is known at both ends.

    An earlier radius no longer counts where the canal may bend to both sides and the marks do not tell how.
    """
    bend = line.bend
    # Without a scale a line says nothing in millimetres.
    if bend is None or bend.begins_mm is None:
        return {}
    facts: Facts = {"curvature_deg": charted_deg(bend), "curve_start_mm": bend.begins_mm}
    if line.orifice_mm is not None:
        facts["orifice_mm"] = line.orifice_mm
    if bend.radius_mm is not None and bend.radius_mm.most is not None and bend.middle_from_end_mm is not None:
        facts |= {"curve_radius_mm": bend.radius_mm.value, "curve_from_end_mm": bend.middle_from_end_mm}
    elif bend.shape is BendShape.UNCLEAR:
        facts |= {"curve_radius_mm": None, "curve_from_end_mm": None}
    return as_charted(facts)


def standing_bends(canal: Canal) -> list[BendInSpace]:
    """Bends in space of the canal both of whose images count, in order."""
    return _standing(canal, _BENDS(canal.pk))


def canals_on(image: Image) -> list[str]:
    """Names of the canals of which something was taken from the image: a length, or a bend with another image."""
    lengths = LengthReading.objects.filter(marking__image=image).values_list("canal__name", flat=True)
    return sorted({*lengths, *(bend.canal.name for bend in _bends_on(image))})


def charted_from(image: Image, canal: Canal) -> Iterator[Facts]:
    """What was charted of the canal from the image: once for each length and each bend in space taken from it."""
    for reading in canal.readings.filter(marking__image=image).select_related("marking"):
        yield _facts_of(reading, canal)
    for bend in _bends_on(image).filter(canal=canal):
        yield _bend(bend)


def charted(canal: Canal) -> Facts:
    """What the images that count say of the canal: the last length taken, and the last bend in space over it."""
    last = _last(canal, _TAKEN(canal.pk))
    bends = standing_bends(canal)
    return (_facts_of(last, canal) if last else {}) | (_bend(bends[-1]) if bends else {})


def bend_shapes(canals: Sequence[Canal]) -> dict[str, BendShape]:
    """By canal, what the images that count say of how it bends: to both sides, or perhaps; none where it is to one, or
    unknown.

    Of several the worst counts: a bend may be hidden on one view.
    """
    keys = [canal.pk for canal in canals]
    taken, bends = _TAKEN(*keys), _BENDS(*keys)
    shapes = {canal.name: _worst(canal, _last(canal, taken), _standing(canal, bends)[-1:]) for canal in canals}
    return {name: shape for name, shape in shapes.items() if shape is not None}


def _worst(canal: Canal, last: LengthReading | None, spatial: Sequence[BendInSpace]) -> BendShape | None:
    markings = [last and last.marking, *(view for row in spatial for view in (row.first, row.second))]
    lines = [_line(marking, canal) for marking in markings if marking]
    shapes = {line.bend.shape for line in lines if line and line.bend}
    return next((shape for shape in (BendShape.DOUBLE, BendShape.UNCLEAR) if shape in shapes), None)


def _standing(canal: Canal, bends: Sequence[BendInSpace]) -> list[BendInSpace]:
    own = [row for row in bends if row.canal_id == canal.pk]
    return [row for row in own if all(view.image.counts_in(canal.name) for view in (row.first, row.second))]


def _last(canal: Canal, taken: Sequence[LengthReading]) -> LengthReading | None:
    """The last length taken from an image that counts; `taken` has the last one first."""
    own = ((row, row.marking) for row in taken if row.canal_id == canal.pk)
    return next((row for row, marking in own if marking and marking.image.counts_in(canal.name)), None)


def _line(marking: Marking, canal: Canal) -> LineMeasured | None:
    return next((line for line in measured_of(marking).lines if line.canal == canal.name), None)


def _bends_on(image: Image) -> Any:
    return BendInSpace.objects.filter(Q(first__image=image) | Q(second__image=image)).select_related("canal")


def _facts_of(reading: LengthReading, canal: Canal) -> Facts:
    if reading.marking is None:
        return {}
    line = _line(reading.marking, canal)
    return facts(line) if line else {}


def _bend(row: BendInSpace) -> Facts:
    return as_charted({"curvature_deg": in_space_of(row).value})
