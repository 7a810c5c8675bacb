"""A programme, and the link by which its first coordinator comes, by whoever runs the server."""

from __future__ import annotations

from django.db import transaction
from django.utils import timezone

from cases.domain.access.invited import Invited
from cases.domain.access.roles import Role
from cases.domain.errors import Conflict, NotUsable
from cases.models import Invitation, Membership, Programme
from cases.services.people import invitations
from cases.services.people.invitations import MadeInvitation

MOST_NAME = 120


@transaction.atomic
def invite(*, name: str, days: int, further: bool) -> MadeInvitation:
    """A link for the first coordinator of the programme of this name, which is made where there is none. One that was
    made before and not used counts no more.

    Raises Conflict where it has a coordinator, or another programme has one and none further is wanted, and NotUsable.
    """
    name = " ".join(name.split())
    if not 0 < len(name) <= MOST_NAME or not name.isprintable():
        raise NotUsable(reason=f"A programme needs a name of at most {MOST_NAME} letters.", at=("name",))
    keepers = Membership.objects.filter(role=Role.COORDINATOR, person__is_active=True).select_related("programme")
    own = keepers.filter(programme__name=name).first()
    if own is not None:
        raise Conflict(reason=f"'{name}' has a coordinator, who invites all others at the app.")
    other = keepers.first()
    if other is not None and not further:
        raise Conflict(
            reason=f"There is a programme with a coordinator: '{other.programme.name}'. For one more, add --further."
        )
    programme, _ = Programme.objects.get_or_create(name=name)
    for_a_coordinator = Invitation.objects.still_open(programme.pk).filter(role=Role.COORDINATOR)
    for_a_coordinator.update(withdrawn_at=timezone.now())
    return invitations.make(by=None, programme_id=programme.pk, person=Invited(role=Role.COORDINATOR), days=days)
