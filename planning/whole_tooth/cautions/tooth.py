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


def tooth_cautions(given: PlanInput, tooth: Tooth, figures: Figures) -> list[Caution]:
    """What concerns the tooth as a whole."""
    return [
        *_setting(given),
        *_irrigants(given),
        *_needle(given, figures),
        *_motors(given),
        *_glide_path(given, figures),
        *_joins(given),
        *_further_canals(given, tooth, figures),
    ]


def _setting(given: PlanInput) -> Iterator[Caution]:
    if given.setting is Setting.CLINIC and not given.isolated:
        yield caution("isolation-missing")
        if Irrigant.SODIUM_HYPOCHLORITE in _irrigants_used(given):
            yield caution("hypochlorite-unisolated")
    if given.setting is Setting.EXTRACTED:
        yield caution("bench-protection")


def _irrigants_used(given: PlanInput) -> tuple[Irrigant, ...]:
    """In the order they meet."""
    return (given.choices.irrigant, *given.choices.final_rinse)


def _irrigants(given: PlanInput) -> Iterator[Caution]:
    used = _irrigants_used(given)
    if given.setting is Setting.BLOCK and Irrigant.SODIUM_HYPOCHLORITE in used:
        yield caution("hypochlorite-in-block")
    # Either order: what matters is that nothing flushes the one before the other comes.
    if {Irrigant.SODIUM_HYPOCHLORITE, Irrigant.CHLORHEXIDINE} in map(set, itertools.pairwise(used)):
        yield caution("chlorhexidine-after-hypochlorite")


def _needle(given: PlanInput, figures: Figures) -> Iterator[Caution]:
    tip = given.choices.needle.tip
    if given.setting is Setting.CLINIC and tip == "open":
        yield caution("needle-open-in-clinic")
    key = f"needle.short_{tip}"
    if figures[key] < published()[key].value:
        yield caution("needle-near", value=figures[key], limit=published()[key])


def _motors(given: PlanInput) -> Iterator[Caution]:
    silent = [
        i.name
        for i in given.kit.instruments
        if i.motion != "hand" and i.motion in given.technique.motions and not states_motor(i)
    ]
    if silent:
        yield caution("motor-not-stated", value_text=", ".join(silent))


def _glide_path(given: PlanInput, figures: Figures) -> Iterator[Caution]:
    """An engine instrument goes into a canal only after a hand instrument has passed freely to length."""
    phases = [phase for phase in given.technique.phases if given.setting in phase.settings]
    kinds = [phase.kind for phase in phases]
    if PhaseKind.DESCEND not in kinds:
        return
    by_hand = [phase for phase in phases[: kinds.index(PhaseKind.DESCEND)] if _is_glide_path(phase)]
    if not by_hand:
        yield caution("glide-path-missing", technique=given.technique.name)
        return
    last, usual = given.choices.glide_path_to_size or by_hand[-1].to_size, figures.row("glide_path.usual")
    if last is not None and last < usual.value:
        yield caution("glide-path-small", value=last, limit=usual)


def _is_glide_path(phase: Phase) -> bool:
    return phase.kind is PhaseKind.TO_LENGTH and not phase.to_estimate


def _joins(given: PlanInput) -> Iterator[Caution]:
    patterns = {root.name: root.pattern for root in given.roots}
    for name in dict.fromkeys(canal.root for canal in given.canals):
        here = [
            canal.name
            for canal in given.canals
            if canal.root == name and canal.finding is not Finding.SEARCHED_NOT_FOUND
        ]
        if len(here) > 1 and patterns.get(name, Pattern.UNKNOWN) is Pattern.UNKNOWN:
            yield caution("join-not-tested", root=name, canals=" and ".join(here))


def _further_canals(given: PlanInput, tooth: Tooth, figures: Figures) -> Iterator[Caution]:
    """The canal that gets missed: usual ones that are not in the plan, and what else the tooth may have."""
    if given.setting is Setting.BLOCK:
        return
    charted = {canal.name for canal in given.canals}
    offered = {offer.name for offer in (*tooth.canals, *tooth.look_for)}
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
