"""Who changed what, and when."""

from __future__ import annotations

from django.db import models
from django.db.models import Q

from cases.models.access_keys import AccessKey
from cases.models.base import AppendOnly
from cases.models.clients import Client
from cases.models.people import Person, Programme
from cases.models.teeth import Case


class ChangeLog(AppendOnly):
    """One change, written in the transaction that made it. People are ids here; free text stays in its own row."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="+")
    case = models.ForeignKey(Case, on_delete=models.PROTECT, related_name="log", null=True)
    actor = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    key = models.ForeignKey(
        AccessKey, on_delete=models.PROTECT, related_name="+", null=True, help_text="By which it came; null: by none."
    )
    client = models.ForeignKey(
        Client, on_delete=models.PROTECT, related_name="+", null=True, help_text="Whose token it came by."
    )
    at = models.DateTimeField(auto_now_add=True)
    verb = models.CharField(max_length=40)
    subject = models.CharField(max_length=40, help_text="Kind of the row that changed.")
    subject_id = models.CharField(max_length=40)
    before = models.TextField(blank=True, help_text="Canonical JSON of the values before.")
    after = models.TextField(blank=True)

    class Meta:
        constraints = [models.CheckConstraint(condition=Q(key=None) | Q(client=None), name="log_by_one_program")]
        indexes = [
            models.Index(fields=["case", "id"], name="log_of_a_case"),
            models.Index(fields=["case", "-at"], name="log_of_a_case_by_time"),
        ]

    def __str__(self) -> str:
        return f"{self.verb} {self.subject}"
