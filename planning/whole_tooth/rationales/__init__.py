"""The reason of every number that a canal's plan shows: the rule, what went in, the rows it rests on."""

from __future__ import annotations

from planning.canal.canal import Canal
from planning.contract.rationale import Rationale
from planning.foundation.tables import Figures
from planning.tray.selection import Selection
from planning.whole_tooth.rationales.about import RationaleContext
from planning.whole_tooth.rationales.filling import filling_rationales
from planning.whole_tooth.rationales.lengths import length_rationales
from planning.whole_tooth.rationales.shapes import estimate_rationales, shape_rationales, size_rationales
from planning.whole_tooth.rationales.stops import needle_rationales, stop_rationales
from planning.work.canal_plan import PlannedCanal

PARTS = (
    length_rationales,
    stop_rationales,
    needle_rationales,
    size_rationales,
    shape_rationales,
    filling_rationales,
    estimate_rationales,
)


def rationales(canal: Canal, planned: PlannedCanal, selected: Selection, figures: Figures) -> tuple[Rationale, ...]:
    """The rationales of one canal, in the order in which a plan is read. Their rows are among the figures used."""
    about = RationaleContext(canal=canal, planned=planned, selected=selected, figures=figures)
    return tuple(each for part in PARTS for each in part(about))
