"""Opening a case and changing what is charted."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any
from uuid import UUID

from django.db import IntegrityError, transaction

from cases.domain.errors import CanalInUse, NotUsable, SettingFixed, TakenAlready
from cases.domain.roles import Role
from cases.domain.uuid7 import uuid7
from cases.domain.who_may import May, refuse_unless
from cases.models import Canal, Case, DemoPatient, Membership, Person, Root, Tooth
from cases.services import log, sent
from cases.services.doer import actor_in, guard
from cases.services.locking import locked, raise_revision, refuse_changed
from planning import teeth
from planning.errors import PlanningError
from planning.plan_input import Anatomy, Finding, Pattern
from planning.teeth import CanalOnOffer, ToothName


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
    id: UUID | None = None,
) -> tuple[Case, bool]:
    """A new case with the tooth's usual canals, or those named, and True; False where it was sent before.

    Raises UnknownTooth and NotationMissing, NotAllowed, NotUsable, SentDifferently.
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
    sent_hash = sent.fingerprint(actor=actor, to=programme_id, what=what)
    if before := sent.known(Case, id, sent_hash):
        return before, False
    found = _tooth_of(tooth)
    offered = _offered(found, canals)
    patient, _ = DemoPatient.objects.get_or_create(programme_id=programme_id, alias=patient_alias)
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
    row = Tooth(case=case, iso=found.iso, notation=tooth.notation or "", designation=typed)
    row.save(force_insert=True)
    _chart(row, offered)
    log.changed(actor=actor, verb="open", subject=case, case=case, after={"tooth": found.iso, "setting": setting})
    return case, True


def _tooth_of(name: ToothName) -> teeth.Tooth:
    try:
        return teeth.find(name)
    except PlanningError as refusal:
        raise refusal.below("tooth") from None


def _offered(tooth: teeth.Tooth, names: Sequence[str] | None) -> list[CanalOnOffer]:
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
    found = Membership.objects.filter(programme_id=programme_id, person_id=person_id, role=Role.SUPERVISOR).first()
    if found is None:
        raise NotUsable(reason="That person does not supervise in this programme.", at=("supervisor",))
    return found.person


@transaction.atomic
def change_case(*, actor: Person, case: Case, seen_revision: int, changes: Mapping[str, Any]) -> Case:
    """The case with other facts. Raises NotAllowed, ChangedSince, SettingFixed, NotUsable."""
    guard(May.CHART, actor, case)
    case = locked(case.pk)
    refuse_changed(case, seen_revision)
    given = dict(changes)
    if "supervisor" in given:
        given["supervisor"] = _supervisor(case.programme_id, given["supervisor"])
    if given.get("anatomy", Anatomy.USUAL) == Anatomy.CHARTED_BY_SUPERVISOR:
        guard(May.JUDGE_ANATOMY, actor, case)
    before = {name: getattr(case, name) for name in given if getattr(case, name) != given[name]}
    if "setting" in before and Canal.objects.filter(tooth__case=case, readings__isnull=False).exists():
        raise SettingFixed(at=("setting",))
    if not before:
        return case
    after = {name: given[name] for name in before}
    for name, value in after.items():
        setattr(case, name, value)
    case.save(update_fields=list(after))
    log.changed(actor=actor, verb="change", subject=case, case=case, before=before, after=after)
    # Who supervises is no part of a plan.
    if set(after) - {"supervisor"}:
        raise_revision(case)
    return case


# --- canals ---


@transaction.atomic
def add_canal(
    *,
    actor: Person,
    case: Case,
    name: str,
    root: str,
    facts: Mapping[str, Any],
    seen_revision: int | None = None,
    id: UUID | None = None,
) -> tuple[Canal, bool]:
    """A further canal and True; False where it was sent before. Raises NotAllowed, TakenAlready, NotUsable."""
    guard(May.CHART, actor, case)
    case = locked(case.pk)
    sent_hash = sent.fingerprint(actor=actor, to=case.pk, what={"name": name, "root": root, "facts": dict(facts)})
    if before := sent.known(Canal, id, sent_hash):
        return before, False
    refuse_changed(case, seen_revision)
    tooth = case.tooth
    if tooth.canals.filter(name=name).exists():
        raise TakenAlready(what="A canal", name=name, at=("name",))
    _guard_finding(actor, case, facts)
    in_root, _ = Root.objects.get_or_create(tooth=tooth, name=root)
    last = tooth.canals.order_by("-place").values_list("place", flat=True).first()
    place = 0 if last is None else last + 1
    canal = Canal(id=id or uuid7(), sent_hash=sent_hash, tooth=tooth, root=in_root, place=place, name=name, **facts)
    _refuse_bend_above_orifice(canal)
    canal.save(force_insert=True)
    log.changed(actor=actor, verb="add", subject=canal, case=case, after={"name": name, "root": root, **facts})
    raise_revision(case)
    return canal, True


@transaction.atomic
def change_canal(*, actor: Person, canal: Canal, changes: Mapping[str, Any], seen_revision: int | None = None) -> Canal:
    """The canal with other facts. Raises NotAllowed, ChangedSince, TakenAlready, NotUsable."""
    case = canal.tooth.case
    guard(May.CHART, actor, case)
    case = locked(case.pk)
    refuse_changed(case, seen_revision)
    canal = Canal.objects.get(pk=canal.pk)
    _guard_finding(actor, case, changes)
    before = {name: getattr(canal, name) for name in changes if getattr(canal, name) != changes[name]}
    if not before:
        return canal
    after = {name: changes[name] for name in before}
    for name, value in after.items():
        setattr(canal, name, value)
    _refuse_bend_above_orifice(canal)
    try:
        with transaction.atomic():
            canal.save(update_fields=list(after))
    except IntegrityError:
        raise TakenAlready(what="A canal", name=canal.name, at=("name",)) from None
    log.changed(actor=actor, verb="change", subject=canal, case=case, before=before, after=after)
    raise_revision(case)
    return canal


def _guard_finding(actor: Person, case: Case, facts: Mapping[str, Any]) -> None:
    if facts.get("finding") == Finding.SEARCHED_NOT_FOUND:
        guard(May.JUDGE_ANATOMY, actor, case)


def _refuse_bend_above_orifice(canal: Canal) -> None:
    orifice, bend = canal.orifice_um, canal.curve_start_um
    if orifice is not None and bend is not None and bend < orifice:
        raise NotUsable(reason="The curve cannot begin above the orifice. Check both depths.", at=("curve_start_mm",))


@transaction.atomic
def remove_canal(*, actor: Person, canal: Canal, seen_revision: int | None = None) -> None:
    """Takes a canal out that nothing was measured in. Raises NotAllowed, CanalInUse, ChangedSince."""
    case = canal.tooth.case
    guard(May.CHART, actor, case)
    case = locked(case.pk)
    refuse_changed(case, seen_revision)
    if canal.readings.exists() or canal.junctions.exists():
        raise CanalInUse(canal=canal.name)
    root = canal.root
    log.changed(actor=actor, verb="remove", subject=canal, case=case, before={"name": canal.name, "root": root.name})
    canal.delete()
    if not root.canals.exists():
        root.delete()
    raise_revision(case)


@transaction.atomic
def set_root(
    *,
    actor: Person,
    case: Case,
    name: str,
    pattern: Pattern,
    main_canal: str | None,
    seen_revision: int | None = None,
) -> Root:
    """How the canals of a root run. Raises NotAllowed, NotHere, NotUsable, ChangedSince."""
    guard(May.CHART, actor, case)
    case = locked(case.pk)
    refuse_changed(case, seen_revision)
    root = case.tooth.roots.filter(name=name).first()
    if root is None:
        raise NotUsable(reason=f"This tooth has no root {name}. Add a canal in it first.")
    canal = root.canals.filter(name=main_canal).first()
    if main_canal is not None and canal is None:
        raise NotUsable(reason=f"Root {name} has no canal {main_canal}.", at=("main_canal",))
    before = {"pattern": root.pattern, "main_canal": root.main_canal and root.main_canal.name}
    after = {"pattern": pattern.value, "main_canal": main_canal}
    if before == after:
        return root
    root.pattern, root.main_canal = pattern, canal
    root.save(update_fields=["pattern", "main_canal"])
    log.changed(actor=actor, verb="change", subject=root, case=case, before=before, after=after)
    raise_revision(case)
    return root
