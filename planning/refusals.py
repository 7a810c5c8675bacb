"""What is charted but not planned, and input that contradicts itself."""

from __future__ import annotations

from planning.errors import CanalsDoNotFit, InstrumentNotDescribed, NoCanals, Pointer, ToothNotPlanned
from planning.joins import refuse_unfit_roots
from planning.plan_input import Anatomy, CanalInput, PlanInput
from planning.readings import Resorption
from planning.tables import Figures
from planning.techniques import Setting
from planning.teeth import Tooth

THIRD_MOLARS = frozenset({"18", "28", "38", "48"})


def refuse(given: PlanInput, tooth: Tooth, figures: Figures) -> None:
    """Raises ToothNotPlanned, NoCanals, CanalsDoNotFit or ChoiceNotPossible."""
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
    for number, item in enumerate(given.kit.filling):
        wrong = "size" if item.size <= 0 else "taper" if item.taper < 0 else ""
        if wrong:
            reason = f"a {wrong} like this cannot be. See its package."
            raise InstrumentNotDescribed(
                instrument=f"{item.kind} {item.name}", reason=reason, at=("kit", "filling", number, wrong)
            )
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
    if canal.apex_mm is not None and canal.apex_mm > figures["apex.refused"]:
        raise ToothNotPlanned(tooth=tooth.iso, reason=f"the apex of {canal.name} is open", at=(*at, "apex_mm"))
    _refuse_measures(number, canal, figures)
    if canal.resorption is Resorption.BONE_AND_ROOT:
        raise ToothNotPlanned(tooth=tooth.iso, reason=f"root resorption at {canal.name}", at=(*at, "resorption"))


def _refuse_measures(number: int, canal: CanalInput, figures: Figures) -> None:
    """Raises CanalsDoNotFit for the first measure that cannot be right."""
    longest = figures["length.most"]
    radius = figures["curvature.radius_least"], figures["curvature.radius_most"]
    wall = canal.wall
    entered: tuple[tuple[Pointer, float | None, float, float, str], ...] = (
        (("curve_radius_mm",), canal.curve_radius_mm, *radius, "a curve's radius"),
        (("curve_from_end_mm",), canal.curve_from_end_mm, 0.0, longest, "a curve's distance from the end"),
        (("wall", "thickness_mm"), wall.thickness_mm if wall else None, 0.0, figures["wall.most"], "a wall"),
        (("wall", "from_end_mm"), wall.from_end_mm if wall else None, 0.0, longest, "a wall's distance from the end"),
        # However deep an instrument went, it went there; only what no instrument can reach is a slip.
        *((("felt", at, "depth_mm"), felt.depth_mm, 0.0, longest, "a depth") for at, felt in enumerate(canal.felt)),
    )
    for at, value, least, most, what in entered:
        if value is not None and not least <= value <= most:
            reason = f"{canal.name}: {what} lies between {least:g} and {most:g} mm. Check the figure and its unit."
            raise CanalsDoNotFit(reason=reason, at=("canals", number, *at))
