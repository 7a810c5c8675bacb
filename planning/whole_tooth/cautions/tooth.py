"""What a plan warns of that concerns the tooth as a whole, from what was typed in."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Set

from planning.anatomy import CanalOnOffer, LookForKind, Tooth
from planning.contract.canal_facts import Finding
from planning.contract.cautions import caution
from planning.contract.plan_input import Irrigant, Pattern, PlanInput
from planning.contract.plan_value import Caution
from planning.foundation.tables import Figures, published
from planning.techniques.technique import Phase, PhaseKind, Setting
from planning.tray.layout import states_motor

SINGLE = "single"
"""What the tables call the canal of a tooth that usually has one."""


def tooth_cautions(plan_input: PlanInput, tooth: Tooth, figures: Figures) -> list[Caution]:
    """The cautions that concern the tooth as a whole."""
    return [
        *_setting(plan_input),
        *_irrigants(plan_input),
        *_needle(plan_input, figures),
        *_motors(plan_input),
        *_glide_path(plan_input, figures),
        *_joins(plan_input),
        *_further_canals(plan_input, tooth, figures),
    ]


def _setting(plan_input: PlanInput) -> Iterator[Caution]:
    if plan_input.setting is Setting.CLINIC and not plan_input.isolated:
        yield caution("isolation-missing")
        if Irrigant.SODIUM_HYPOCHLORITE in _irrigants_used(plan_input):
            yield caution("hypochlorite-unisolated")
    if plan_input.setting is Setting.EXTRACTED:
        yield caution("bench-protection")


def _irrigants_used(plan_input: PlanInput) -> tuple[Irrigant, ...]:
    """The irrigants of the plan, in the order in which they meet."""
    return (plan_input.choices.irrigant, *plan_input.choices.final_rinse)


def _irrigants(plan_input: PlanInput) -> Iterator[Caution]:
    used = _irrigants_used(plan_input)
    if plan_input.setting is Setting.BLOCK and Irrigant.SODIUM_HYPOCHLORITE in used:
        yield caution("hypochlorite-in-block")
    # Either order: what matters is that nothing flushes the one before the other comes.
    if {Irrigant.SODIUM_HYPOCHLORITE, Irrigant.CHLORHEXIDINE} in map(set, itertools.pairwise(used)):
        yield caution("chlorhexidine-after-hypochlorite")


def _needle(plan_input: PlanInput, figures: Figures) -> Iterator[Caution]:
    tip = plan_input.choices.needle.tip
    if plan_input.setting is Setting.CLINIC and tip == "open":
        yield caution("needle-open-in-clinic")
    key = f"needle.short_{tip}"
    if figures[key] < published()[key].value:
        yield caution("needle-near", value=figures[key], limit=published()[key])


def _motors(plan_input: PlanInput) -> Iterator[Caution]:
    silent = [
        i.name
        for i in plan_input.kit.instruments
        if i.motion != "hand" and i.motion in plan_input.technique.motions and not states_motor(i)
    ]
    if silent:
        yield caution("motor-not-stated", value_text=", ".join(silent))


def _glide_path(plan_input: PlanInput, figures: Figures) -> Iterator[Caution]:
    """An engine instrument goes into a canal only after a hand instrument has passed freely to length."""
    phases = [phase for phase in plan_input.technique.phases if plan_input.setting in phase.settings]
    kinds = [phase.kind for phase in phases]
    if PhaseKind.DESCEND not in kinds:
        return
    by_hand = [phase for phase in phases[: kinds.index(PhaseKind.DESCEND)] if _is_glide_path(phase)]
    if not by_hand:
        yield caution("glide-path-missing", technique=plan_input.technique.name)
        return
    last, usual = plan_input.choices.glide_path_to_size or by_hand[-1].to_size, figures.row("glide_path.usual")
    if last is not None and last < usual.value:
        yield caution("glide-path-small", value=last, limit=usual)


def _is_glide_path(phase: Phase) -> bool:
    return phase.kind is PhaseKind.TO_LENGTH and not phase.to_estimate


def _joins(plan_input: PlanInput) -> Iterator[Caution]:
    patterns = {root.name: root.pattern for root in plan_input.roots}
    for name in dict.fromkeys(canal.root for canal in plan_input.canals):
        here = [
            canal.name
            for canal in plan_input.canals
            if canal.root == name and canal.finding is not Finding.SEARCHED_NOT_FOUND
        ]
        if len(here) > 1 and patterns.get(name, Pattern.UNKNOWN) is Pattern.UNKNOWN:
            yield caution("join-not-tested", root=name, canals=" and ".join(here))


def _further_canals(plan_input: PlanInput, tooth: Tooth, figures: Figures) -> Iterator[Caution]:
    """The canal that gets missed: usual ones that are not in the plan, and what else the tooth may have."""
    if plan_input.setting is Setting.BLOCK:
        return
    charted = {canal.name for canal in plan_input.canals}
    offered = {offer.name for offer in (*tooth.canals, *tooth.look_for)}
    # Canals under names that no table has. They may stand for a usual one.
    others = charted - offered
    missing = [usual.name for usual in tooth.canals if usual.name not in charted and not _parted(usual.name, others)]
    if missing:
        yield caution("usual-canal-missing", tooth=tooth.iso, missing=", ".join(missing))
    further = [
        other.name
        for other in tooth.look_for
        if other.name not in charted
        and other.name[0].upper() not in others
        and other.kind != LookForKind.FORM
        and _worth_a_note(other, figures)
    ]
    if further:
        yield caution("further-canal", tooth=tooth.iso, further=", ".join(further))


def _parted(usual: str, others: Set[str]) -> bool:
    """Whether canals that no table has stand for the usual one: MB for a B, DB for a D, any for a single."""
    return any(usual == SINGLE or name.startswith(usual) or name.endswith(usual) for name in others)


def _worth_a_note(other: CanalOnOffer, figures: Figures) -> bool:
    """Rarer ones are told where the tooth is opened; what never comes true teaches to ignore cautions."""
    shares = [study.share for study in other.studies if study.share is not None]
    return not shares or max(shares) >= figures["further_canal.from_share"]
