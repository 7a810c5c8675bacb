"""The reason of every number that a canal's plan shows: the rule, what went in, the rows it rests on."""

from __future__ import annotations

from planning.canal.canal import Canal
from planning.contract.plan_value import CanalPlan, Rationale
from planning.foundation.tables import Figures
from planning.whole_tooth.rationales.about import RationaleContext
from planning.whole_tooth.rationales.lengths import length_rationales
from planning.whole_tooth.rationales.shapes import (
    estimate_rationales,
    filling_rationales,
    shape_rationales,
    size_rationales,
)
from planning.whole_tooth.rationales.stops import needle_rationales, stop_rationales

PARTS = (
    length_rationales,
    stop_rationales,
    needle_rationales,
    size_rationales,
    shape_rationales,
    filling_rationales,
    estimate_rationales,
)


def rationales(canal: Canal, plan: CanalPlan, tooth_iso: str, figures: Figures) -> tuple[Rationale, ...]:
    """The rationales of one canal, in the order in which a plan is read. Their rows are among the figures used."""
    about = RationaleContext(canal=canal, plan=plan, tooth_iso=tooth_iso, figures=figures)
    return tuple(each for part in PARTS for each in part(about))
