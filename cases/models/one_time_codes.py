"""A supervisor's one-time codes for on-site sign-offs, and wrong tries at them."""

from __future__ import annotations

from django.db import models
from django.db.models import Q

from cases.models.base import HASH_LENGTH, Identified
from cases.models.people import Person
from cases.models.teeth import Case


class OneTimeCode(Identified):
    """One enrolment of a supervisor. The secret is stored nowhere: it is derived from `seed` and the server's key, so
    that nobody can make codes from the database or a copy of it."""

    person = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="one_time_codes")
    seed = models.CharField(max_length=HASH_LENGTH, editable=False)
    made_at = models.DateTimeField(auto_now_add=True)
    confirmed_at = models.DateTimeField(null=True, blank=True, help_text="It counts from then on.")
    ended_at = models.DateTimeField(null=True, blank=True)
    last_step = models.PositiveBigIntegerField(default=0, help_text="Of the last code used: none counts twice.")

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["person"], condition=Q(ended_at=None, confirmed_at=None), name="one_time_code_to_confirm"
            ),
            models.UniqueConstraint(
                fields=["person"], condition=Q(ended_at=None, confirmed_at__isnull=False), name="one_time_code_counts"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.person}, {self.made_at:%Y-%m-%d}"


class WrongCode(models.Model):
    """A code that did not count: the supervisor whose code it should have been, and on whose phone it was typed."""

    supervisor = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="+")
    by = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="+")
    case = models.ForeignKey(Case, on_delete=models.CASCADE, null=True, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        indexes = [models.Index(fields=["supervisor", "at"], name="wrong_code_by_supervisor")]

    def __str__(self) -> str:
        return f"{self.at:%Y-%m-%d %H:%M}"
