"""What is charted but not planned, and input that contradicts itself."""

from __future__ import annotations

from planning.anatomy import Tooth
from planning.canal.joins import refuse_unfit_roots
from planning.contract.plan_input import CanalInput, PlanInput
from planning.contract.tooth_facts import Anatomy
from planning.foundation.bounds import refuse_outside
from planning.foundation.errors import CanalsDoNotFit, NoCanals, ToothNotPlanned
from planning.foundation.tables import Figures
from planning.lengths.readings import Resorption
from planning.techniques.technique import Setting

THIRD_MOLARS = frozenset({"18", "28", "38", "48"})


def refuse(plan_input: PlanInput, tooth: Tooth, figures: Figures) -> None:
    """Raises ToothNotPlanned, NoCanals, OutOfBounds, CanalsDoNotFit or ChoiceNotPossible."""
    # A training block has no anatomy that could rule it out.
    if plan_input.setting is not Setting.BLOCK:
        _refuse_tooth(plan_input, tooth)
    if not plan_input.canals:
        raise NoCanals(tooth=tooth.iso, at=("canals",))
    # In the order of the chart: a refusal names them, and is the same every time.
    seen: dict[str, None] = {}
    for number, canal in enumerate(plan_input.canals):
        if canal.name in seen:
            raise CanalsDoNotFit(reason=f"{canal.name} is there twice.", at=("canals", number, "name"))
        seen[canal.name] = None
        _refuse_canal(plan_input, tooth, number, canal, figures)
    refuse_outside(plan_input.kit, ("kit",))
    refuse_outside(plan_input.choices, ("choices",))
    refuse_outside(plan_input.overrides, ("overrides",))
    for number, choice in enumerate(plan_input.choices.canals):
        if choice.canal not in seen:
            reason = f"There is no canal {choice.canal} to choose a size for. Name one of {', '.join(seen)}."
            raise CanalsDoNotFit(reason=reason, at=("choices", "canals", number, "canal"))
    refuse_unfit_roots(plan_input)


def _refuse_tooth(plan_input: PlanInput, tooth: Tooth) -> None:
    reasons = (
        (tooth.primary, ("tooth",), "primary teeth resorb over their successors"),
        (plan_input.root_filled, ("root_filled",), "retreatment of a root-filled tooth"),
        (plan_input.perforation, ("perforation",), "a perforation is suspected"),
        (plan_input.anatomy is Anatomy.FUSED_OR_C_SHAPED, ("anatomy",), "fused or C-shaped canals"),
        (
            tooth.iso in THIRD_MOLARS and plan_input.anatomy is not Anatomy.CHARTED_BY_SUPERVISOR,
            ("anatomy",),
            "a third molar whose canals no supervisor has charted",
        ),
    )
    for wrong, at, reason in reasons:
        if wrong:
            raise ToothNotPlanned(tooth=tooth.iso, reason=reason, at=at)


def _refuse_canal(plan_input: PlanInput, tooth: Tooth, number: int, canal: CanalInput, figures: Figures) -> None:
    at = ("canals", number)
    refuse_outside(canal, at, of=canal.name)
    if canal.apex_mm is not None and canal.apex_mm > figures["apex.refused"]:
        raise ToothNotPlanned(tooth=tooth.iso, reason=f"the apex of {canal.name} is open", at=(*at, "apex_mm"))
    if canal.resorption is Resorption.BONE_AND_ROOT:
        raise ToothNotPlanned(tooth=tooth.iso, reason=f"root resorption at {canal.name}", at=(*at, "resorption"))
