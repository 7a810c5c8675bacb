"""What supervisors let pass."""

from __future__ import annotations

from typing import ClassVar

from django.db import models
from django.db.models import Q

from cases.models.base import AppendOnly, ClientCreated
from cases.models.people import Person
from cases.models.plans import ToothPlanVersion
from cases.models.teeth import Canal, Case
from planning.contract.plan_input import WIDE_CANAL


class CautionOverride(ClientCreated, AppendOnly):
    """A supervisor lets the work go on in spite of a caution. It stays in the record, also once it is taken back."""

    moving: ClassVar[frozenset[str]] = frozenset({"withdrawn_at", "withdrawn_by"})

    case = models.ForeignKey(Case, on_delete=models.PROTECT, related_name="overrides")
    version = models.ForeignKey(
        ToothPlanVersion, on_delete=models.PROTECT, related_name="+", help_text="The version that carried the caution."
    )
    code = models.CharField(max_length=60)
    canal = models.ForeignKey(
        Canal, on_delete=models.PROTECT, related_name="overrides", null=True, help_text="None: the whole tooth."
    )
    reason = models.TextField()
    final_size = models.PositiveSmallIntegerField(null=True, help_text="The size chosen for a wide canal.")
    supervisor = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    at = models.DateTimeField(auto_now_add=True)
    withdrawn_at = models.DateTimeField(null=True)
    withdrawn_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+", null=True)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=~Q(reason=""), name="override_has_reason"),
            models.CheckConstraint(
                condition=Q(code=WIDE_CANAL, final_size__isnull=False)
                | (~Q(code=WIDE_CANAL) & Q(final_size__isnull=True)),
                name="override_of_a_wide_canal_has_a_size",
            ),
            models.CheckConstraint(
                condition=Q(withdrawn_at__isnull=True, withdrawn_by__isnull=True)
                | Q(withdrawn_at__isnull=False, withdrawn_by__isnull=False),
                name="override_withdrawn_by_somebody",
            ),
            models.UniqueConstraint(
                fields=["case", "code", "canal"],
                condition=Q(withdrawn_at__isnull=True),
                name="override_of_a_canal_stands_once",
            ),
            models.UniqueConstraint(
                fields=["case", "code"],
                condition=Q(withdrawn_at__isnull=True, canal__isnull=True),
                name="override_of_the_tooth_stands_once",
            ),
        ]

    def __str__(self) -> str:
        return self.code
