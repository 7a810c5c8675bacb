"""A case, a kit, a technique and choices as one value that holds all a plan rests on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from uuid import UUID

from cases.domain.errors import NotUsable
from cases.domain.progress import depths
from cases.mapping import uses
from cases.mapping.chart_rows import chart
from cases.mapping.charts import by_name, canal_input, override_inputs, root_input, tooth_facts_of
from cases.mapping.courses import course_event, events_of
from cases.mapping.kits import kit_at_hand, programme_widths, techniques_of, thresholds_of
from cases.models import Case
from cases.services.charting import rests_on
from planning.contract.plan_input import CanalChoice, Choices, PlanInput, Progress
from planning.contract.plan_input import Kit as KitValue
from planning.contract.plan_value import Plan
from planning.foundation.counts import at_most
from planning.foundation.encoding import canonical_text, digest
from planning.techniques.technique import Setting


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What a person chooses of a plan's input; all the rest is taken from the case."""

    kit_id: UUID
    technique: str
    choices: Choices


SEEDS = 10**9  # whole numbers that any reader of JSON keeps exactly


NOTHING_BEGUN: Mapping[str, Progress] = {}


def snapshot(case: Case, asked: Asked, *, samples: int, progress: Mapping[str, Progress] = NOTHING_BEGUN) -> PlanInput:
    """The planner's input with copies of everything, so that a later change of a kit never touches a plan.

    What was felt at the chair so far is part of it, and how far the work on each canal has come. The same case draws
    the same samples every time.

    Raises NotUsable for a kit or technique the programme does not have.
    """
    kit = kit_at_hand(asked.kit_id)
    if kit is None or kit.programme_id != case.programme_id:
        raise NotUsable(reason="The programme has no such kit. Choose one from its list.", at=("kit_id",))
    techniques = techniques_of(case.programme_id)
    if asked.technique not in techniques:
        known = ", ".join(techniques)
        raise NotUsable(reason=f"There is no technique '{asked.technique}'. There are: {known}.", at=("technique",))
    charted = chart(case.pk)
    tooth, canals = charted.tooth, list(charted.tooth.canals.all())
    felt = depths.recorded_depths(course_event(event) for event in events_of(case.pk))
    usual = programme_widths(case.programme_id, tooth.iso)
    shapes = rests_on.bend_shapes(canals)
    return PlanInput(
        tooth=tooth.iso,
        setting=Setting(case.setting),
        canals=tuple(
            replace(
                canal_input(canal, usual),
                bend_shape=shapes.get(canal.name),
                # The last ones, as the planner takes no more.
                felt=felt.get(canal.name, ())[-at_most("felt").most :],
                progress=progress.get(canal.name),
            )
            for canal in canals
        ),
        kit=uses.counted(kit, charted.student, charted),
        technique=techniques[asked.technique],
        choices=asked.choices,
        roots=tuple(root_input(root) for root in tooth.roots.all()),
        thresholds=thresholds_of(case.programme_id),
        overrides=override_inputs(charted),
        samples=samples,
        seed=case.pk.int % SEEDS,
        **by_name(tooth_facts_of(case)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Intent:
    """What a plan approval binds: kit, technique, final sizes, limits. Lengths are signed for on their own."""

    setting: Setting
    kit: str
    technique: str
    choices: Choices
    thresholds: dict[str, float]


def _unused(kit: KitValue) -> KitValue:
    """How often its instruments were used is no choice of anybody's."""
    return replace(kit, instruments=tuple(replace(instrument, uses=0) for instrument in kit.instruments))


def intent_hash(plan_input: PlanInput, plan: Plan) -> str:
    """SHA-256 of the intent, every final size stated, chosen or proposed."""
    sizes = tuple(CanalChoice(canal=canal.canal, final_size=canal.final_size) for canal in plan.canals)
    choices = Choices(
        needle=plan_input.choices.needle,
        irrigant=plan_input.choices.irrigant,
        final_rinse=plan_input.choices.final_rinse,
        series_taper=plan_input.choices.series_taper,
        glide_path_to_size=plan_input.choices.glide_path_to_size,
        canals=sizes,
    )
    intent = Intent(
        setting=plan_input.setting,
        kit=canonical_text(_unused(plan_input.kit)),
        technique=canonical_text(plan_input.technique),
        choices=choices,
        thresholds=plan_input.thresholds,
    )
    return digest(canonical_text(intent))
