"""Charting canals and roots."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any
from uuid import UUID

from django.db import IntegrityError, transaction

from cases.domain.access.permissions import May
from cases.domain.errors import CanalInUse, NotUsable, TakenAlready
from cases.domain.uuid7 import uuid7
from cases.mapping.charts import facts_of
from cases.models import Canal, Case, Person, Root
from cases.services.common import audit, idempotency
from cases.services.common.guard import guard
from cases.services.common.locking import locked, raise_revision, refuse_changed
from planning.canal.initial_shape import refuse_widths
from planning.contract.canal_facts import CanalFacts, Finding, WidthInput, as_charted
from planning.contract.plan_input import Pattern
from planning.foundation.bounds import refuse_outside
from planning.foundation.counts import at_most
from planning.foundation.encoding import encode
from planning.foundation.errors import PlanningError
from planning.instruments.iso_3630 import sizes

NAMED = {"name", "reference_point"}
"""Columns of their own; the rest is among the facts."""


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
    sent_hash = idempotency.fingerprint(
        actor=actor, to=case.pk, what={"name": name, "root": root, "facts": dict(facts)}
    )
    if before := idempotency.sent_before(Canal, id, sent_hash):
        return before, False
    refuse_changed(case, seen_revision)
    tooth = case.tooth
    if tooth.canals.filter(name=name).exists():
        raise TakenAlready(what="A canal", name=name, at=("name",))
    _guard_finding(actor, case, facts)
    in_root, _ = Root.objects.get_or_create(tooth=tooth, name=root)
    last = tooth.canals.order_by("-place").values_list("place", flat=True).first()
    place = 0 if last is None else last + 1
    canal = Canal(id=id or uuid7(), sent_hash=sent_hash, tooth=tooth, root=in_root, place=place, name=name)
    _chart(canal, facts)
    canal.save(force_insert=True)
    audit.changed(actor=actor, verb="add", subject=canal, case=case, after={"name": name, "root": root, **facts})
    raise_revision(case)
    return canal, True


@transaction.atomic
def change_canal(*, actor: Person, canal: Canal, changes: Mapping[str, Any], seen_revision: int | None = None) -> Canal:
    """The canal with other facts. Raises NotAllowed, ChangedSince, TakenAlready, NotUsable."""
    case = canal.tooth.case
    guard(May.CHART, actor, case)
    case = locked(case.pk)
    refuse_changed(case, seen_revision)
    # As it is now, behind the lock.
    canal = Canal.objects.get(pk=canal.pk)
    _guard_finding(actor, case, changes)
    before, after = _chart(canal, changes)
    if not after:
        return canal
    try:
        with transaction.atomic():
            canal.save(update_fields=[*NAMED, "facts"])
    except IntegrityError:
        raise TakenAlready(what="A canal", name=canal.name, at=("name",)) from None
    audit.changed(actor=actor, verb="change", subject=canal, case=case, before=before, after=after)
    raise_revision(case)
    return canal


def _chart(canal: Canal, changes: Mapping[str, Any]) -> tuple[dict[str, Any], dict[str, Any]]:
    """Puts the changes into the row. Returns what differed: as it was, as it is. Raises NotUsable and OutOfBounds."""
    facts = facts_of(canal)
    was = {name: getattr(canal if name in NAMED else facts, name) for name in changes}
    after = {name: value for name, value in as_charted(changes).items() if value != was[name]}
    for name in NAMED & after.keys():
        setattr(canal, name, after[name])
    facts = replace(facts, **{name: value for name, value in after.items() if name not in NAMED})
    _refuse(facts)
    canal.facts = encode(facts)
    return {name: was[name] for name in after}, after


def _refuse(facts: CanalFacts) -> None:
    """Raises NotUsable and OutOfBounds for facts that cannot be right, alone or together."""
    refuse_outside(facts)
    first, orifice, bend = facts.first_binder_size, facts.orifice_mm, facts.curve_start_mm
    if first is not None and first not in sizes():
        raise NotUsable(reason=f"{first} is no ISO size.", at=("first_binder_size",))
    if orifice is not None and bend is not None and bend < orifice:
        raise NotUsable(reason="The curve cannot begin above the orifice. Check both depths.", at=("curve_start_mm",))
    _refuse_widths(facts.widths)


def _refuse_widths(widths: tuple[WidthInput, ...]) -> None:
    most = at_most("widths").most
    if len(widths) > most:
        raise NotUsable(reason=f"A canal has at most {most} widths.", at=("widths",))
    try:
        refuse_widths(widths, "This canal")
    except PlanningError as refusal:
        raise refusal.below("widths") from None


def _guard_finding(actor: Person, case: Case, facts: Mapping[str, Any]) -> None:
    # That a canal is not there is a judgement of the anatomy: a supervisor records it.
    if facts.get("finding") == Finding.SEARCHED_NOT_FOUND:
        guard(May.JUDGE_ANATOMY, actor, case)


@transaction.atomic
def remove_canal(*, actor: Person, canal: Canal, seen_revision: int | None = None) -> None:
    """Takes a canal out that nothing was measured in. Raises NotAllowed, CanalInUse, ChangedSince."""
    case = canal.tooth.case
    guard(May.CHART, actor, case)
    case = locked(case.pk)
    refuse_changed(case, seen_revision)
    if canal.readings.exists() or canal.junctions.exists() or canal.overrides.exists():
        raise CanalInUse(canal=canal.name)
    root = canal.root
    audit.changed(actor=actor, verb="remove", subject=canal, case=case, before={"name": canal.name, "root": root.name})
    canal.delete()
    # A root is charted only for its canals.
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
        here = ", ".join(root.canals.order_by("place").values_list("name", flat=True))
        raise NotUsable(reason=f"Root {name} has no canal {main_canal}. Choose one of {here}.", at=("main_canal",))
    before = {"pattern": root.pattern, "main_canal": root.main_canal and root.main_canal.name}
    after = {"pattern": pattern.value, "main_canal": main_canal}
    if before == after:
        return root
    root.pattern, root.main_canal = pattern, canal
    root.save(update_fields=["pattern", "main_canal"])
    audit.changed(actor=actor, verb="change", subject=root, case=case, before=before, after=after)
    raise_revision(case)
    return root
