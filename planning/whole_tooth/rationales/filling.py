"""Why a cone is proposed, where things rest in the prepared canal, and how much has to be filled."""

from __future__ import annotations

from collections.abc import Iterator

from planning.anatomy.ovals import FRUSTUM
from planning.canal.filling import Filling, Held, longest_mm
from planning.contract.obturation import FillingItem
from planning.contract.rationale import Calculation, Rationale, Rounding
from planning.instruments.iso_3630 import HUNDREDTH_MM
from planning.whole_tooth.rationales.about import RationaleContext, rationale
from planning.whole_tooth.rationales.terms import Term, comes_to, known, no_less


def filling_rationales(about: RationaleContext) -> Iterator[Rationale]:
    filling = about.planned.grounds.filling
    if filling is None:
        return
    keys = ("length", "small_upto", "tolerance_small", "tolerance_large", "tolerance_tool", "seats_within")
    tolerances = tuple(about.figures.row(f"filling.{key}") for key in keys)
    if filling.items:
        rule = "The deepest place where it is nowhere wider than the prepared canal; earliest: as wide as it may be."
        deepest_mm = longest_mm(filling.filled, about.figures)
        rests = (
            comes_to(_tip(item, held, deepest_mm), rest.rests_mm, "mm", Rounding.HUNDREDTH)
            for item, held, rest in zip(filling.items, filling.held, filling.obturation.rests, strict=True)
        )
        yield rationale("obturation.rests", rule, (), tolerances, *rests)
    shape = (
        ("final size", (about.plan.final_size or 0) * HUNDREDTH_MM, "mm"),
        ("final taper", about.plan.final_taper * HUNDREDTH_MM, "mm/mm"),
    )
    rule = "The kit's cone of the final size and taper, else the one that rests nearest to the end, within tolerance."
    yield rationale("obturation.master_cone", rule, shape, tolerances)
    yield from _volume_rationales(about, filling)


def _tip(item: FillingItem, held: Held, most_mm: float) -> Term:
    """The depth of its tip where the canal holds it: its own width lies so far above the tip as its taper says."""
    if held.depth_mm > most_mm:
        return known("at most", most_mm, "mm")
    place, tip_mm = known("held at", held.at_mm, "mm"), item.size * HUNDREDTH_MM
    if not item.taper or held.wide_mm <= tip_mm:
        return place
    wider = known("canal there", held.wide_mm, "mm") - known("its tip", tip_mm, "mm")
    return place + wider / known("its taper", item.taper * HUNDREDTH_MM, "mm/mm")


def _volume_rationales(about: RationaleContext, filling: Filling) -> Iterator[Rationale]:
    rule = (
        "From the orifice to the end: the canal as wide and as narrow as it was, an ellipse, together with the round "
        "shape that instruments have left in its middle; a cone is round."
    )
    volumes, end = filling.obturation.volumes, (("canal's end", about.plan.end_mm, "mm"),)
    if volumes.before_mm3 is not None:
        yield rationale("obturation.volumes.before_mm3", rule, end)
    yield rationale("obturation.volumes.prepared_mm3", rule, end)
    if volumes.cone_mm3 is not None and filling.master is not None:
        cone = _cone(filling, filling.master, volumes.cone_mm3)
        yield rationale("obturation.volumes.cone_mm3", rule, end, (), cone)
    prepared = known("prepared", filling.prepared_mm3, "mm³")
    left = prepared if filling.cone_mm3 is None else prepared - known("cone", filling.cone_mm3, "mm³")
    calculation = comes_to(no_less(left, 0), volumes.to_fill_mm3, "mm³", Rounding.HUNDREDTH)
    rule = "The prepared canal less the cone's part in it."
    yield rationale("obturation.volumes.to_fill_mm3", rule, end, (), calculation)


def _cone(filling: Filling, master: FillingItem, cone_mm3: float) -> Calculation:
    """A frustum from the orifice to where the tip of the proposed cone stands."""
    tip = known("its tip", master.size * HUNDREDTH_MM, "mm")
    taper = known("its taper", master.taper * HUNDREDTH_MM, "mm/mm")
    held_mm = filling.held[filling.items.index(master)].depth_mm
    at_mm, orifice_mm = min(filling.filled.end_mm, held_mm), filling.filled.prepared[0][0]
    along = known("from orifice to tip", at_mm - orifice_mm, "mm")
    top = known("wide at the orifice", tip.value + taper.value * along.value, "mm")
    volume = known("π/12", FRUSTUM * 2, "") * along * (top * top + top * tip + tip * tip)
    return comes_to(volume, cone_mm3, "mm³", Rounding.HUNDREDTH)
