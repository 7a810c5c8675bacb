"""Links by which people join a programme."""

from __future__ import annotations

from uuid import UUID

from django.db import models
from django.db.models import F, Q
from django.utils import timezone

from cases.domain.access.invited import InvitationState, same_username
from cases.domain.access.roles import Role
from cases.models.base import HASH_LENGTH, Identified, choices, one_of
from cases.models.people import Membership, Person, Programme


class InvitationManager(models.Manager["Invitation"]):
    def still_open(self, programme_id: UUID) -> models.QuerySet[Invitation]:
        """Those of the programme whose links count."""
        return self.filter(programme=programme_id, used_at=None, withdrawn_at=None, ends_at__gt=timezone.now())

    def usernames(self, programme_id: UUID) -> dict[str, bool]:
        """Of everybody in the programme, with True, and of those who have a link that counts, with False; as they are
        compared (`same_username`)."""
        invited = self.still_open(programme_id).exclude(username="").values_list("username", flat=True)
        members = Membership.objects.filter(programme=programme_id).values_list("person__username", flat=True)
        return {
            **{same_username(name): False for name in invited},
            **{same_username(name): True for name in members},
        }


class Invitation(Identified):
    """A link by which one person joins a programme, once. Its secret is shown once and stored nowhere.

    The names that were given leave this row with its use: from then on they stand in the person's row alone.
    """

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="invitations")
    role = models.CharField(max_length=12, choices=choices(Role))
    group = models.CharField(max_length=60, blank=True)
    name = models.CharField(max_length=80, blank=True, help_text="As others will see it; empty: the person chooses.")
    username = models.CharField(max_length=60, blank=True, help_text="To sign in with; empty: the person chooses.")
    secret_hash = models.CharField(max_length=HASH_LENGTH, editable=False, unique=True)
    made_by = models.ForeignKey(
        Person, on_delete=models.PROTECT, null=True, related_name="+", help_text="Null: whoever runs the server."
    )
    made_at = models.DateTimeField(default=timezone.now)
    ends_at = models.DateTimeField()
    used_by = models.ForeignKey(Person, on_delete=models.PROTECT, null=True, related_name="+")
    used_at = models.DateTimeField(null=True)
    withdrawn_at = models.DateTimeField(null=True)

    objects = InvitationManager()

    class Meta:
        constraints = [
            models.CheckConstraint(condition=one_of("role", Role), name="invitation_role_known"),
            models.CheckConstraint(condition=Q(ends_at__gt=F("made_at")), name="invitation_ends_later"),
            models.CheckConstraint(
                condition=Q(used_by=None, used_at=None) | Q(used_by__isnull=False, used_at__isnull=False),
                name="invitation_used_by_somebody",
            ),
            models.CheckConstraint(condition=Q(used_at=None) | Q(withdrawn_at=None), name="invitation_ends_one_way"),
        ]

    def __str__(self) -> str:
        return f"{self.role}, {self.state}"

    @property
    def state(self) -> InvitationState:
        """At this moment."""
        if self.used_at is not None:
            return InvitationState.USED
        if self.withdrawn_at is not None:
            return InvitationState.WITHDRAWN
        return InvitationState.OPEN if self.ends_at > timezone.now() else InvitationState.ENDED
