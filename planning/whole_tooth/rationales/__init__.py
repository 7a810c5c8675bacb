"""The reason of every number that a canal's plan shows: the rule, what went in, the rows it rests on."""

from __future__ import annotations

from planning.canal.canal import Canal
from planning.contract.plan_value import CanalPlan, Why
from planning.foundation.tables import Figures
from planning.whole_tooth.rationales.about import About
from planning.whole_tooth.rationales.lengths import length_whys
from planning.whole_tooth.rationales.shapes import estimate_whys, filling_whys, shape_whys, size_whys
from planning.whole_tooth.rationales.stops import needle_whys, stop_whys

PARTS = (length_whys, stop_whys, needle_whys, size_whys, shape_whys, filling_whys, estimate_whys)


def whys(canal: Canal, plan: CanalPlan, tooth_iso: str, figures: Figures) -> tuple[Why, ...]:
    """In the order in which a plan is read; their rows are among the figures used."""
    about = About(canal=canal, plan=plan, tooth_iso=tooth_iso, figures=figures)
    return tuple(each for part in PARTS for each in part(about))
