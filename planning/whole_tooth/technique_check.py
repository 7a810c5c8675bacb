"""A technique tried out: an order of work is written for a check canal in every setting, and every walk of it ends."""

from __future__ import annotations

from dataclasses import dataclass

from planning.canal.setting_phases import phases_of
from planning.contract.plan_input import CanalInput, Choices, Kit, Needle, PlanInput
from planning.foundation.bounds import within
from planning.foundation.errors import PlanningError, TechniqueNotUsable
from planning.foundation.quantities import UM_PER_HUNDREDTH_MM, mm
from planning.foundation.tables import published, rows
from planning.instruments.iso_3630 import Instrument, Motion, Use, sizes
from planning.lengths.readings import ConfirmingImage
from planning.run_sheet.graph import End
from planning.techniques.files import refuse_unusable
from planning.techniques.technique import Phase, Setting, Technique
from planning.whole_tooth.plan import plan

TOOTH = "11"
"""Straight, with one canal: what a technique does does not depend on the tooth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingTried:
    """What becomes of a technique in one setting."""

    setting: Setting
    phases: tuple[str, ...]
    """Keys, in order."""
    hold_points: tuple[str, ...]
    steps: int
    """Of the order of work that was written for the check canal; every walk through it ends."""
    withheld: tuple[str, ...]
    """What a plan would keep closed, and why."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TechniqueChecked:
    technique: Technique
    settings: tuple[SettingTried, ...]


def check(technique: Technique) -> TechniqueChecked:
    """The technique tried in every setting that it has phases for.

    Raises TechniqueNotUsable for one that `techniques.rules` finds fault with, that could go round for ever, or that
    does not get to its end if all goes as expected.
    """
    refuse_unusable(technique, where=technique.name)
    used = [setting for setting in Setting if any(setting in phase.settings for phase in technique.phases)]
    return TechniqueChecked(technique=technique, settings=tuple(_tried(technique, setting) for setting in used))


def _tried(technique: Technique, setting: Setting) -> SettingTried:
    where = f"{technique.name}, setting '{setting}'"
    try:
        made = plan(_check_case(technique, setting))
    except TechniqueNotUsable as refusal:
        # The path leads into the technique that was sent, not into the check case around it.
        refusal.pointer = refusal.pointer[1:]
        raise
    except PlanningError as refusal:
        raise TechniqueNotUsable(where=where, reason=f"it cannot be worked: {refusal}") from None
    (canal,) = made.canals
    last = canal.run_sheet.nodes[canal.expected_path[-1]]
    # Where something is withheld the order of work ends early, and says so itself.
    if not canal.withheld and not (isinstance(last, End) and last.outcome == "finished"):
        reason = "worked as expected it does not come to its end. Look at the passes that are expected."
        raise TechniqueNotUsable(where=where, reason=reason, at=("phases",))
    phases = phases_of(_check_case(technique, setting))
    return SettingTried(
        setting=setting,
        phases=tuple(phase.key for phase in phases),
        hold_points=tuple(filter(None, map(_hold_point, phases))),
        steps=len(canal.run_sheet.nodes),
        withheld=tuple(withheld.says for withheld in canal.withheld),
    )


def _hold_point(phase: Phase) -> str:
    return phase.hold_point or ""


def _check_case(technique: Technique, setting: Setting) -> PlanInput:
    """Any length and any complete kit will do: which steps there are depends on neither."""
    length = within("length").least * 2
    seen = ConfirmingImage(set_mm=length, tip_short_mm=1, reference_point="edge")
    return PlanInput(
        tooth=TOOTH,
        setting=setting,
        canals=(CanalInput(name="single", root="single", reference_point="edge", readings=(seen,)),),
        kit=Kit(name="check kit", instruments=_every_instrument(technique), needles=(_needle(),)),
        technique=technique,
        choices=Choices(needle=_needle()),
        isolated=True,
    )


def _needle() -> Needle:
    return Needle(gauge=max(int(row["gauge"]) for row in rows("needles")), tip="side_vented")


def _every_instrument(technique: Technique) -> tuple[Instrument, ...]:
    engine = next((motion for motion in technique.motions if motion is not Motion.HAND), Motion.HAND)
    length = within("length").most
    steep = int(published()["coronal.steep_taper"].value)
    widest = mm(2 * max(sizes()) * UM_PER_HUNDREDTH_MM)

    def made(size: int, taper: int, motion: Motion, use: Use) -> Instrument:
        return Instrument(
            size=size,
            taper=taper,
            motion=motion,
            use=use,
            length_mm=length,
            cutting_part_mm=length / 2,
            largest_flute_mm=widest,
            speed_rpm=1,
            torque_ncm=1,
        )

    return (
        *(made(size, 2, Motion.HAND, Use.HAND) for size in sizes()),
        *(made(size, 2 * 2, engine, Use.SHAPING) for size in sizes()),
        made(max(sizes()), steep, engine, Use.CORONAL),
    )
