"""What a visit brings with it: who may be named as being in the room, and reference points that have gone."""

from __future__ import annotations

from uuid import UUID

from cases.domain.errors import NotUsable
from cases.domain.roles import Role
from cases.domain.told import Told
from cases.domain.told_of_visits import OnSiteTold, ReopenTold
from cases.models import Canal, Case, Membership, Person, ToothPlanVersion, values
from cases.services import canals

Place = tuple[str | int, ...]


def refuse_stranger_on_site(case: Case, told: Told, at: Place) -> None:
    """Raises NotUsable where somebody is named as being in the room who does not supervise in the programme."""
    named = told.supervisor_id if isinstance(told, OnSiteTold | ReopenTold) else ""
    if named == "" and not isinstance(told, OnSiteTold):
        return
    # Whoever has left the programme's list since was in the room all the same.
    supervisors = Membership.objects.filter(programme_id=case.programme_id, role=Role.SUPERVISOR)
    if not _is_id(named) or not supervisors.filter(person_id=named).exists():
        raise NotUsable(reason="That person does not supervise in this programme.", at=(*at, "supervisor_id"))


def _is_id(text: str) -> bool:
    try:
        return str(UUID(text)) == text.lower()
    except ValueError:
        return False


def move_reference_points(actor: Person, case: Case, told: Told, version: ToothPlanVersion, at: Place) -> None:
    """Canals whose reference point has gone are measured from the new one: lengths taken before count no more.

    Raises NotUsable for a new point with the old one's name: the old lengths would go on counting.
    """
    gone = [(n, one) for n, one in enumerate(told.found) if one.reference_point] if isinstance(told, ReopenTold) else []
    if not gone:
        return
    before = {canal.canal: canal.reference_point for canal in values.made(version).canals}
    for number, one in gone:
        if one.reference_point == before.get(one.canal):
            reason = f"{one.canal}: give the new reference point a name of its own, or the old lengths would count on."
            raise NotUsable(reason=reason, at=(*at, "found", number, "reference_point"))
        row = Canal.objects.filter(tooth__case=case, name=one.canal).select_related("tooth__case").first()
        if row is not None:
            canals.change_canal(actor=actor, canal=row, changes={"reference_point": one.reference_point})
