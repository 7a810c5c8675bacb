"""Ten ordinary cases, as a programme sees them. Lengths, widths and curves are check values; the teeth are invented."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from planning.contract.canal_facts import WidthInput
from planning.contract.plan_input import (
    CanalChoice,
    CanalInput,
    Choices,
    Irrigant,
    Junction,
    Kit,
    Needle,
    Override,
    Pattern,
    PlanInput,
    RootInput,
)
from planning.instruments.iso_3630 import Use
from planning.lengths.readings import DirectSight, Resorption
from planning.techniques.files import provided_techniques
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.planning.given import HAND_SIZES, canal, cone, confirmed, hand, plugger, rotary, spreader

SIZES = (25, 30, 35, 40, 45, 50)
SIDE_VENTED = Needle(gauge=30, tip="side_vented")
CASE_KIT = Kit(
    name="for ten cases",
    instruments=(
        *(hand(size, 31) for size in (6, *HAND_SIZES)),
        *(rotary(25, steep, Use.CORONAL, length_mm=31) for steep in (10, 8)),
        *(rotary(size, 4, length_mm=31) for size in SIZES),
    ),
    needles=(SIDE_VENTED,),
    filling=(
        *(cone(size, taper) for taper in (2, 4) for size in SIZES),
        *map(plugger, (40, 45, 50, 60)),
        spreader(25),
    ),
)


def tooth(iso: str, *canals: CanalInput, **more: Any) -> PlanInput:
    """On an extracted tooth, by crown-down; whatever a root's canals do is known."""
    roots = {each.root for each in canals}
    fields: dict[str, Any] = {
        "tooth": iso,
        "setting": Setting.EXTRACTED,
        "canals": canals,
        "roots": tuple(RootInput(name=root, pattern=Pattern.SEPARATE) for root in sorted(roots)),
        "kit": CASE_KIT,
        "technique": provided_techniques()["crown-down"],
        "choices": Choices(needle=SIDE_VENTED, irrigant=Irrigant.SALINE),
    }
    return PlanInput(**(fields | more))


def measured(name: str, root: str, length_mm: float, point: str = "", **more: Any) -> CanalInput:
    """Confirmed to end at this working length: an instrument set 0.5 mm deeper was 0.5 mm short of the apex."""
    point = point or f"{name} cusp"
    return canal(name, root, *confirmed(length_mm + 1, length_mm + 0.5, 0.5, point), point=point, **more)


# --- the ten ---


def molar_with_a_joining_canal() -> PlanInput:
    mb2 = measured("MB2", "MB", 19.0, "MB cusp", junction=Junction(from_terminus_mm=3.0, method="cone_mark"))
    mb1, db, p = measured("MB1", "MB", 19.5), measured("DB", "DB", 18.5), measured("P", "P", 21.0)
    joins = RootInput(name="MB", pattern=Pattern.JOIN, main_canal="MB1")
    others = (RootInput(name=name, pattern=Pattern.SEPARATE) for name in ("DB", "P"))
    return tooth("26", mb1, mb2, db, p, roots=(joins, *others))


def premolar_with_three_roots() -> PlanInput:
    return tooth("14", measured("MB", "MB", 19.5), measured("DB", "DB", 19.0), measured("P", "P", 20.0))


def incisor_with_two_canals() -> PlanInput:
    """They part below the orifice and meet again before the end."""
    labial = measured("B", "single", 20.0, "incisal edge")
    lingual = measured(
        "L", "single", 19.5, "incisal edge", junction=Junction(from_terminus_mm=3.0, method="two_instruments")
    )
    root = RootInput(name="single", pattern=Pattern.DIVIDE_AND_JOIN, main_canal="B")
    return tooth("41", labial, lingual, roots=(root,))


def canine_of_27_mm() -> PlanInput:
    """The tooth, and not the working length, which ends a millimetre before it."""
    return tooth("23", measured("single", "single", 26.0, "cusp tip"))


def molar_with_a_mesial_curve_of_40_degrees() -> PlanInput:
    """Let be opened by a supervisor, as a curve of more than 35 degrees asks for."""
    bent: dict[str, Any] = {"curvature_deg": 40, "curve_radius_mm": 6.0, "curve_start_mm": 14.0}
    mb, ml = measured("MB", "M", 19.5, **bent), measured("ML", "M", 19.0, **bent)
    let = tuple(Override(code="curve-supervisor", canal=name, reason="With me beside.") for name in ("MB", "ML"))
    return tooth("36", mb, ml, measured("D", "D", 20.0, "DB cusp"), overrides=let)


def molar_with_a_wide_palatal_canal() -> PlanInput:
    """As wide as a size 60 at its end: no size is proposed, and the supervisor has chosen none yet."""
    widths = (WidthInput(from_end_mm=0, narrow_mm=0.6), WidthInput(from_end_mm=5, narrow_mm=0.9))
    p = measured("P", "P", 20.5, widths=widths)
    return tooth("16", measured("MB1", "MB", 19.0), measured("DB", "DB", 18.5), p)


def calcified_incisor() -> PlanInput:
    """Narrowed nearly to nothing, as the image shows it."""
    widths = (WidthInput(from_end_mm=1, narrow_mm=0.1), WidthInput(from_end_mm=10, narrow_mm=0.2))
    narrow = measured("single", "single", 21.0, "incisal edge", widths=widths)
    return tooth("21", narrow, factors=("visibility:moderate",))


def molar_with_an_oval_distal_canal() -> PlanInput:
    widths = (
        WidthInput(from_end_mm=1, narrow_mm=0.3, wide_mm=0.7),
        WidthInput(from_end_mm=5, narrow_mm=0.5, wide_mm=1.6),
    )
    mb, ml = measured("MB", "M", 19.0), measured("ML", "M", 19.0)
    return tooth("46", mb, ml, measured("D", "D", 19.5, "DB cusp", widths=widths))


def resorbed_incisor() -> PlanInput:
    """Bone is gone around its end: set back by half a millimetre more. A root that is gone too is not planned."""
    lengths = confirmed(22.0, 21.0, 1.0, "incisal edge")
    resorbed = canal("single", "single", *lengths, point="incisal edge", resorption=Resorption.BONE, apex_mm=0.7)
    return tooth("11", resorbed)


def training_block() -> PlanInput:
    """Its end in sight."""
    moulded = canal("single", "single", DirectSight(seen_mm=16.5, reference_point="top"), point="top")
    return tooth("11", moulded, setting=Setting.BLOCK, choices=Choices(needle=SIDE_VENTED, irrigant=Irrigant.WATER))


CASES: dict[str, Callable[[], PlanInput]] = {
    each.__name__.replace("_", " "): each
    for each in (
        molar_with_a_joining_canal,
        premolar_with_three_roots,
        incisor_with_two_canals,
        canine_of_27_mm,
        molar_with_a_mesial_curve_of_40_degrees,
        molar_with_a_wide_palatal_canal,
        calcified_incisor,
        molar_with_an_oval_distal_canal,
        resorbed_incisor,
        training_block,
    )
}


def on_a_patient(plan_input: PlanInput) -> PlanInput:
    """The same tooth in the clinic: dam on, rinsed with hypochlorite and with EDTA, accepted if it is hard."""
    rinses = (Irrigant.EDTA, Irrigant.SODIUM_HYPOCHLORITE)
    choices = replace(plan_input.choices, irrigant=Irrigant.SODIUM_HYPOCHLORITE, final_rinse=rinses)
    counted = plan(plan_input).difficulty
    hard = counted is not None and counted.level == "high"
    accepted = (Override(code="difficulty-high", canal=None, reason="Accepted."),) if hard else ()
    return replace(
        plan_input, setting=Setting.CLINIC, isolated=True, choices=choices, overrides=(*plan_input.overrides, *accepted)
    )


def chosen(plan_input: PlanInput, canal: str, size: int) -> PlanInput:
    """Once the supervisor has chosen a size for a wide canal."""
    let = Override(code="wide-canal", canal=canal, reason="Fitted to this canal.", final_size=size)
    choices = replace(plan_input.choices, canals=(CanalChoice(canal=canal, final_size=size, reason="As chosen."),))
    return replace(plan_input, choices=choices, overrides=(*plan_input.overrides, let))
