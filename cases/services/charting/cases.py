"""Opening a case, and changing its facts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any
from uuid import UUID

from django.db import transaction

from cases.domain.access.permissions import May, refuse_unless
from cases.domain.access.roles import Role
from cases.domain.alias import alias_of
from cases.domain.errors import NotUsable, SettingFixed
from cases.domain.uuid7 import uuid7
from cases.mapping.charts import tooth_facts_of
from cases.models import Canal, Case, DemoPatient, Membership, Person, Root, Tooth
from cases.services.charting import aliases
from cases.services.common import audit, idempotency
from cases.services.common.guard import actor_in, guard, refuse_unless_treats
from cases.services.common.locking import locked, raise_revision, refuse_changed
from planning import anatomy
from planning.anatomy import CanalOnOffer, ToothName
from planning.contract.difficulty import factors
from planning.contract.tooth_facts import Anatomy
from planning.foundation.encoding import encode
from planning.foundation.errors import PlanningError
from planning.whole_tooth.difficulty_rules import refuse_unknown

COLUMNS = {"setting", "supervisor_id"}
"""What can be changed and is a column of its own; the rest is among the facts."""


@transaction.atomic
def open_case(
    *,
    actor: Person,
    programme_id: UUID,
    patient_alias: str,
    tooth: ToothName,
    setting: str,
    canals: Sequence[str] | None = None,
    supervisor_id: UUID | None = None,
    alias_is_no_name: bool = False,
    id: UUID | None = None,
) -> tuple[Case, bool]:
    """A new case with the tooth's usual canals, or those named, and True; False where it was sent before.

    Raises UnknownTooth and NotationMissing, NotAllowed, NotUsable, AliasRefused, AliasLooksLikeAName, SentDifferently.
    """
    refuse_unless(May.OPEN_CASE, actor_in(actor, programme_id))
    # One student opens one case at a time: the same sent twice at once finds the first.
    Membership.objects.select_for_update(no_key=True).get(person=actor, programme_id=programme_id)
    what = {
        "patient_alias": patient_alias,
        "tooth": tooth,
        "setting": setting,
        "canals": None if canals is None else list(canals),
        "supervisor_id": str(supervisor_id),
    }
    sent_hash = idempotency.fingerprint(actor=actor, to=programme_id, what=what)
    if before := idempotency.sent_before(Case, id, sent_hash):
        return before, False
    refuse_unless_treats(actor, programme_id, setting)
    tooth_found = _tooth_of(tooth)
    offered = _offered(tooth_found, canals)
    alias = alias_of(patient_alias, is_no_name=alias_is_no_name)
    # Locked: a correction of the alias at this moment would miss a case that is not there yet.
    held = DemoPatient.objects.select_for_update(no_key=True)
    patient, _ = held.get_or_create(programme_id=programme_id, alias=alias)
    case = Case.objects.create(
        id=id or uuid7(),
        sent_hash=sent_hash,
        programme_id=programme_id,
        patient=patient,
        student=actor,
        supervisor=_supervisor(programme_id, supervisor_id),
        setting=setting,
    )
    typed = "".join(tooth.designation.split())
    row = Tooth(case=case, iso=tooth_found.iso, notation=tooth.notation or "", designation=typed)
    row.save(force_insert=True)
    _chart(row, offered)
    audit.changed(
        actor=actor, verb="open", subject=case, case=case, after={"tooth": tooth_found.iso, "setting": setting}
    )
    return case, True


def _tooth_of(name: ToothName) -> anatomy.Tooth:
    try:
        return anatomy.find(name)
    except PlanningError as refusal:
        raise refusal.below("tooth") from None


def _offered(tooth: anatomy.Tooth, names: Sequence[str] | None) -> list[CanalOnOffer]:
    """The canals on offer under these names; the usual ones where none were named."""
    if names is None:
        return list(tooth.canals)
    offers = {offer.name: offer for offer in (*tooth.canals, *tooth.look_for)}
    for number, name in enumerate(names):
        if name not in offers:
            reason = f"{name} is not on offer for tooth {tooth.iso}. Add it after opening, with its root."
            raise NotUsable(reason=reason, at=("canals", number))
        if name in names[:number]:
            raise NotUsable(reason=f"{name} is named twice.", at=("canals", number))
    return [offers[name] for name in names]


def _chart(tooth: Tooth, offered: Sequence[CanalOnOffer]) -> None:
    roots = {name: Root.objects.create(tooth=tooth, name=name) for name in dict.fromkeys(o.root for o in offered)}
    Canal.objects.bulk_create(
        Canal(
            tooth=tooth,
            root=roots[offer.root],
            place=place,
            name=offer.name,
            reference_point=offer.reference_point or "",
        )
        for place, offer in enumerate(offered)
    )


def _supervisor(programme_id: UUID, person_id: UUID | None) -> Person | None:
    """Raises NotUsable for somebody who does not supervise in the programme."""
    if person_id is None:
        return None
    membership = Membership.objects.filter(programme_id=programme_id, person_id=person_id, role=Role.SUPERVISOR).first()
    if membership is None:
        raise NotUsable(reason="That person does not supervise in this programme.", at=("supervisor_id",))
    return membership.person


def _factors(recorded: Sequence[str]) -> tuple[str, ...]:
    """The recorded factors in one order, whoever recorded them. Raises FactorNotKnown."""
    try:
        refuse_unknown(recorded)
    except PlanningError as refusal:
        raise refusal.below("factors") from None
    known = list(factors())
    return tuple(sorted(recorded, key=lambda code: known.index(code.partition(":")[0])))


@transaction.atomic
def change_case(*, actor: Person, case: Case, seen_revision: int | None, changes: Mapping[str, Any]) -> Case:
    """The case with other facts. Raises NotAllowed, ChangedSince, SettingFixed, NotUsable, FactorNotKnown, and what
    `aliases.correct` does for another alias.
    """
    values = dict(changes)
    # An alias is corrected by rules of its own, in the patient's other cases too.
    alias, is_no_name = values.pop("patient_alias", None), values.pop("alias_is_no_name", False)
    if alias is not None:
        case = aliases.correct(actor=actor, case=case, seen_revision=seen_revision, alias=alias, is_no_name=is_no_name)
        if not values:
            return case
    guard(May.CHART, actor, case)
    case = locked(case.pk)
    refuse_changed(case, seen_revision)
    if "supervisor_id" in values:
        supervisor = _supervisor(case.programme_id, values["supervisor_id"])
        values["supervisor_id"] = supervisor and supervisor.pk
    if values.get("anatomy", Anatomy.USUAL) == Anatomy.CHARTED_BY_SUPERVISOR:
        guard(May.JUDGE_ANATOMY, actor, case)
    if "factors" in values:
        values["factors"] = _factors(values["factors"])
    before, after = _put(case, values)
    if "setting" in after and Canal.objects.filter(tooth__case=case, readings__isnull=False).exists():
        raise SettingFixed(at=("setting",))
    if "setting" in after:
        refuse_unless_treats(case.student, case.programme_id, after["setting"])
    if not after:
        return case
    case.save(update_fields=[*COLUMNS, "facts"])
    audit.changed(actor=actor, verb="change", subject=case, case=case, before=before, after=after)
    # Who supervises is no part of a plan.
    if set(after) - {"supervisor_id"}:
        raise_revision(case)
    return case


def _put(case: Case, values: Mapping[str, Any]) -> tuple[dict[str, Any], dict[str, Any]]:
    """Puts the values into the row; what differed, as it was and as it is."""
    facts = tooth_facts_of(case)
    was = {name: getattr(case if name in COLUMNS else facts, name) for name in values}
    after = {name: value for name, value in values.items() if value != was[name]}
    for name in COLUMNS & after.keys():
        setattr(case, name, after[name])
    case.facts = encode(replace(facts, **{name: after[name] for name in after.keys() - COLUMNS}))
    return {name: was[name] for name in after}, after
