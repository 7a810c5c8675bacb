"""What is charted but not planned, and input that contradicts itself."""

from __future__ import annotations

from planning.anatomy import Tooth
from planning.canal.joins import refuse_unfit_roots
from planning.contract.plan_input import Anatomy, CanalInput, PlanInput
from planning.foundation.bounds import refuse_outside
from planning.foundation.errors import CanalsDoNotFit, NoCanals, ToothNotPlanned
from planning.foundation.tables import Figures
from planning.lengths.readings import Resorption
from planning.techniques.technique import Setting

THIRD_MOLARS = frozenset({"18", "28", "38", "48"})


def refuse(given: PlanInput, tooth: Tooth, figures: Figures) -> None:
    """Raises ToothNotPlanned, NoCanals, OutOfBounds, CanalsDoNotFit or ChoiceNotPossible."""
    if given.setting is not Setting.BLOCK:
        _refuse_tooth(given, tooth)
    if not given.canals:
        raise NoCanals(tooth=tooth.iso, at=("canals",))
    seen: set[str] = set()
    for number, canal in enumerate(given.canals):
        if canal.name in seen:
            raise CanalsDoNotFit(reason=f"{canal.name} is there twice.", at=("canals", number, "name"))
        seen.add(canal.name)
        _refuse_canal(given, tooth, number, canal, figures)
    refuse_outside(given.kit, ("kit",))
    refuse_outside(given.choices, ("choices",))
    refuse_outside(given.overrides, ("overrides",))
    for number, choice in enumerate(given.choices.canals):
        if choice.canal not in seen:
            reason = f"There is no canal {choice.canal} to choose a size for. Name one of {', '.join(seen)}."
            raise CanalsDoNotFit(reason=reason, at=("choices", "canals", number, "canal"))
    refuse_unfit_roots(given)


def _refuse_tooth(given: PlanInput, tooth: Tooth) -> None:
    reasons = (
        (tooth.primary, ("tooth",), "primary teeth resorb over their successors"),
        (given.root_filled, ("root_filled",), "retreatment of a root-filled tooth"),
        (given.perforation, ("perforation",), "a perforation is suspected"),
        (given.anatomy is Anatomy.FUSED_OR_C_SHAPED, ("anatomy",), "fused or C-shaped canals"),
        (
            tooth.iso in THIRD_MOLARS and given.anatomy is not Anatomy.CHARTED_BY_SUPERVISOR,
            ("anatomy",),
            "a third molar whose canals no supervisor has charted",
        ),
    )
    for wrong, at, reason in reasons:
        if wrong:
            raise ToothNotPlanned(tooth=tooth.iso, reason=reason, at=at)


def _refuse_canal(given: PlanInput, tooth: Tooth, number: int, canal: CanalInput, figures: Figures) -> None:
    at = ("canals", number)
    refuse_outside(canal, at, of=canal.name)
    if canal.apex_mm is not None and canal.apex_mm > figures["apex.refused"]:
        raise ToothNotPlanned(tooth=tooth.iso, reason=f"the apex of {canal.name} is open", at=(*at, "apex_mm"))
    if canal.resorption is Resorption.BONE_AND_ROOT:
        raise ToothNotPlanned(tooth=tooth.iso, reason=f"root resorption at {canal.name}", at=(*at, "resorption"))
