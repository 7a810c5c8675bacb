"""What was charted of a canal from marked images, and what of it still stands where an image was struck or moved."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from django.db.models import Q

from cases.models import BendInSpace, Canal, Image, LengthReading, mark_values
from planning.quantities import um
from planning.radiograph import charted_deg
from planning.radiograph.values import BendShape, LineMeasured

Facts = dict[str, Any]


def facts(line: LineMeasured) -> Facts:
    """What a line says of its canal beside the length; a radius only where it is known at both ends.

    Where the canal may bend to both sides and the marks do not tell how, a radius of before counts no longer.
    """
    bend = line.bend
    if bend is None or bend.begins_mm is None:
        return {}
    found: Facts = {"curvature_deg": charted_deg(bend), "curve_start_um": um(bend.begins_mm)}
    if line.orifice_mm is not None:
        found["orifice_um"] = um(line.orifice_mm)
    if bend.radius_mm is not None and bend.radius_mm.most is not None and bend.middle_from_end_mm is not None:
        found |= {"curve_radius_um": um(bend.radius_mm.value), "curve_from_end_um": um(bend.middle_from_end_mm)}
    elif bend.shape is BendShape.UNCLEAR:
        found |= {"curve_radius_um": None, "curve_from_end_um": None}
    return found


def standing_bends(canal: Canal) -> list[BendInSpace]:
    """Bends in space of the canal both of whose images count, in order."""
    rows = canal.bends_in_space.select_related("first__image", "second__image").order_by("number")
    return [row for row in rows if all(view.image.counts_in(canal.name) for view in (row.first, row.second))]


def canals_on(image: Image) -> list[str]:
    """Names of the canals of which something was taken from the image: a length, or a bend with another image."""
    lengths = LengthReading.objects.filter(marking__image=image).values_list("canal__name", flat=True)
    return sorted({*lengths, *(bend.canal.name for bend in _bends_on(image))})


def charted_from(image: Image, canal: Canal) -> Iterator[Facts]:
    """What was charted of the canal from the image, each time."""
    for reading in canal.readings.filter(marking__image=image).select_related("marking"):
        yield _facts_of(reading, canal)
    for bend in _bends_on(image).filter(canal=canal):
        yield _bend(bend)


def charted(canal: Canal) -> Facts:
    """What the images that count say of the canal: the last length taken, and the last bend in space over it."""
    readings = canal.readings.filter(marking__isnull=False, struck_at=None).select_related("marking__image")
    last = next((each for each in readings.order_by("-number") if each.marking.image.counts_in(canal.name)), None)
    bends = standing_bends(canal)
    return (_facts_of(last, canal) if last else {}) | (_bend(bends[-1]) if bends else {})


def _bends_on(image: Image) -> Any:
    return BendInSpace.objects.filter(Q(first__image=image) | Q(second__image=image)).select_related("canal")


def _facts_of(reading: LengthReading, canal: Canal) -> Facts:
    if reading.marking is None:
        return {}
    line = next((line for line in mark_values.measured(reading.marking).lines if line.canal == canal.name), None)
    return facts(line) if line else {}


def _bend(row: BendInSpace) -> Facts:
    return {"curvature_deg": mark_values.in_space(row).value}
