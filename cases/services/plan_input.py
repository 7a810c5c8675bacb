"""A case, a kit, a technique and choices as one value that holds all a plan rests on."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from uuid import UUID

from cases.domain import depths
from cases.domain.errors import NotUsable
from cases.models import Case, Kit, counters, values
from cases.services import rests_on
from planning.begun import Begun
from planning.bounds import MOST_FELT
from planning.encoding import canonical_text, digest
from planning.plan_input import Anatomy, CanalChoice, Choices, PlanInput
from planning.plan_input import Kit as KitValue
from planning.plan_value import Plan
from planning.techniques import Setting


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What a person chooses: the rest of a plan's input is the case's."""

    kit_id: UUID
    technique: str
    choices: Choices


SEEDS = 10**9  # whole numbers that any reader of JSON keeps exactly


NOTHING_BEGUN: Mapping[str, Begun] = {}


def snapshot(case: Case, asked: Asked, *, samples: int, begun: Mapping[str, Begun] = NOTHING_BEGUN) -> PlanInput:
    """The planner's input with copies of everything, so that a later change of a kit never touches a plan.

    What was felt at the chair so far is part of it, and how far the work on each canal has `begun`. The same case draws
    the same samples every time.

    Raises NotUsable for a kit or technique the programme does not have.
    """
    kit = Kit.objects.filter(pk=asked.kit_id, programme_id=case.programme_id).first()
    if kit is None:
        raise NotUsable(reason="The programme has no such kit. Choose one from its list.", at=("kit",))
    techniques = values.techniques(case.programme_id)
    if asked.technique not in techniques:
        known = ", ".join(techniques)
        raise NotUsable(reason=f"There is no technique '{asked.technique}'. There are: {known}.", at=("technique",))
    charted = values.charted(Case.objects.filter(pk=case.pk)).get()
    tooth = charted.tooth
    felt = depths.felt(values.happened(event) for event in case.events.order_by("position"))
    usual = values.programme_widths(case.programme_id, tooth.iso)
    return PlanInput(
        tooth=tooth.iso,
        setting=Setting(case.setting),
        canals=tuple(
            replace(
                values.canal_input(canal, usual),
                bend_shape=rests_on.bend_shape(canal),
                felt=felt.get(canal.name, ())[-MOST_FELT:],
                begun=begun.get(canal.name),
            )
            for canal in tooth.canals.all()
        ),
        kit=counters.counted(kit, charted.student, charted),
        technique=techniques[asked.technique],
        choices=asked.choices,
        roots=tuple(values.root_input(root) for root in tooth.roots.all()),
        isolated=case.isolated,
        root_filled=case.root_filled,
        perforation=case.perforation,
        anatomy=Anatomy(case.anatomy),
        thresholds=values.thresholds(case.programme_id),
        factors=tuple(case.factors),
        overrides=values.override_inputs(charted),
        samples=samples,
        seed=case.pk.int % SEEDS,
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
    return replace(kit, instruments=tuple(replace(one, uses=0) for one in kit.instruments))


def intent_hash(given: PlanInput, plan: Plan) -> str:
    """SHA-256 of the intent, every final size stated, chosen or proposed."""
    sizes = tuple(CanalChoice(canal=canal.canal, final_size=canal.final_size) for canal in plan.canals)
    choices = Choices(
        needle=given.choices.needle,
        irrigant=given.choices.irrigant,
        final_rinse=given.choices.final_rinse,
        series_taper=given.choices.series_taper,
        glide_path_to_size=given.choices.glide_path_to_size,
        canals=sizes,
    )
    intent = Intent(
        setting=given.setting,
        kit=canonical_text(_unused(given.kit)),
        technique=canonical_text(given.technique),
        choices=choices,
        thresholds=given.thresholds,
    )
    return digest(canonical_text(intent))
