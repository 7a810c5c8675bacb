"""Keys by which programs sign in: a programme's services, and scripts of people."""

from __future__ import annotations

from django.db import models
from django.db.models import F, Q

from cases.domain.access.key_text import MOST_NAME
from cases.models.base import HASH_LENGTH, Identified
from cases.models.people import Person, Programme


class Service(Identified):
    """Another system that a programme works with. It is nobody: what it enters, it enters for a student."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="services")
    name = models.CharField(max_length=MOST_NAME)

    # The framework asks it of whoever is behind a request.
    is_authenticated = True

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["programme", "name"], name="service_name_unique"),
            models.CheckConstraint(condition=~Q(name=""), name="service_has_name"),
        ]

    def __str__(self) -> str:
        return self.name


class AccessKey(Identified):
    """A key of a service or of a person's script. Its secret is shown once and stored nowhere."""

    service = models.ForeignKey(Service, on_delete=models.PROTECT, related_name="keys", null=True)
    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="keys", null=True)
    name = models.CharField(max_length=MOST_NAME)
    scopes = models.JSONField(help_text="JSON list of scopes.")
    secret_hash = models.CharField(max_length=HASH_LENGTH, editable=False)
    made_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    made_at = models.DateTimeField(auto_now_add=True)
    ends_at = models.DateTimeField()
    last_used_at = models.DateTimeField(null=True, help_text="To the minute.")
    revoked_at = models.DateTimeField(null=True)

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=Q(service=None, person__isnull=False) | Q(service__isnull=False, person=None),
                name="key_of_service_or_person",
            ),
            models.CheckConstraint(condition=Q(ends_at__gt=F("made_at")), name="key_ends_later"),
        ]

    def __str__(self) -> str:
        return self.name
