"""Charting canals and roots."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any
from uuid import UUID

from django.db import IntegrityError, transaction

from cases.domain.access.permissions import May
from cases.domain.errors import CanalInUse, NotUsable, TakenAlready
from cases.domain.uuid7 import uuid7
from cases.models import Canal, Case, Person, Root
from cases.services.common import audit, idempotency
from cases.services.common.guard import guard
from cases.services.common.locking import locked, raise_revision, refuse_changed
from planning.canal.initial_shape import refuse_widths
from planning.contract.plan_input import Finding, Pattern, WallInput, WidthInput
from planning.foundation.bounds import refuse_outside
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import PlanningError
from planning.foundation.quantities import um
from planning.instruments.iso_3630 import sizes
from planning.whole_tooth.limits import MOST_WIDTHS


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
    columns = _columns(facts)
    in_root, _ = Root.objects.get_or_create(tooth=tooth, name=root)
    last = tooth.canals.order_by("-place").values_list("place", flat=True).first()
    place = 0 if last is None else last + 1
    canal = Canal(id=id or uuid7(), sent_hash=sent_hash, tooth=tooth, root=in_root, place=place, name=name, **columns)
    _refuse_bend_above_orifice(canal)
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
    canal = Canal.objects.get(pk=canal.pk)
    _guard_finding(actor, case, changes)
    columns = _columns(changes)
    before = {name: getattr(canal, name) for name in columns if getattr(canal, name) != columns[name]}
    if not before:
        return canal
    after = {name: columns[name] for name in before}
    for name, value in after.items():
        setattr(canal, name, value)
    _refuse_bend_above_orifice(canal)
    try:
        with transaction.atomic():
            canal.save(update_fields=list(after))
    except IntegrityError:
        raise TakenAlready(what="A canal", name=canal.name, at=("name",)) from None
    audit.changed(actor=actor, verb="change", subject=canal, case=case, before=before, after=after)
    raise_revision(case)
    return canal


def _columns(facts: Mapping[str, Any]) -> dict[str, Any]:
    """The facts as they are kept. Raises NotUsable for a wall, widths or a size that cannot be right."""
    columns = dict(facts)
    first = columns.get("first_binder_size")
    if first is not None and first not in sizes():
        raise NotUsable(reason=f"{first} is no ISO size.", at=("first_binder_size",))
    if "wall" in columns:
        wall: WallInput | None = columns.pop("wall")
        refuse_outside(wall, ("wall",))
        columns["wall_thickness_um"] = None if wall is None else um(wall.thickness_mm)
        columns["wall_from_end_um"] = None if wall is None else um(wall.from_end_mm)
    if "widths" in columns:
        widths: tuple[WidthInput, ...] = columns.pop("widths") or ()
        _refuse_widths(widths)
        columns["widths_text"] = canonical_text(widths) if widths else ""
    return columns


def _refuse_widths(widths: tuple[WidthInput, ...]) -> None:
    if len(widths) > MOST_WIDTHS:
        raise NotUsable(reason=f"A canal has at most {MOST_WIDTHS} widths.", at=("widths",))
    try:
        refuse_widths(widths, "This canal")
    except PlanningError as refusal:
        raise refusal.below("widths") from None


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
    if canal.readings.exists() or canal.junctions.exists() or canal.overrides.exists():
        raise CanalInUse(canal=canal.name)
    root = canal.root
    audit.changed(actor=actor, verb="remove", subject=canal, case=case, before={"name": canal.name, "root": root.name})
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
