"""Bends in space: two marked images of one canal combined. Kept for good; the last one counts."""

from __future__ import annotations

from django.db import models
from django.db.models import F, Q

from cases.models.base import AppendOnly, ClientCreated
from cases.models.markings import Marking
from cases.models.people import Person
from cases.models.teeth import Canal


class BendInSpace(ClientCreated, AppendOnly):
    """One canal's bend from two markings, and its angle as computed then. `number` counts within the canal."""

    canal = models.ForeignKey(Canal, on_delete=models.PROTECT, related_name="bends_in_space")
    number = models.PositiveIntegerField()
    made_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    at = models.DateTimeField(auto_now_add=True)
    first = models.ForeignKey(Marking, on_delete=models.PROTECT, related_name="+")
    second = models.ForeignKey(Marking, on_delete=models.PROTECT, related_name="+")
    apart_deg = models.FloatField(help_text="How far the tube turned about the tooth's long axis between the two.")
    other_side = models.BooleanField(help_text="In the second view it bends to the other side than in the first.")
    text = models.TextField(help_text="What it came to, in canonical JSON.")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["canal", "number"], name="bend_in_space_number_unique"),
            models.CheckConstraint(condition=Q(number__gte=1), name="bend_in_space_counts_from_1"),
            models.CheckConstraint(condition=~Q(first=F("second")), name="bend_in_space_of_two_markings"),
        ]

    def __str__(self) -> str:
        return f"bend in space {self.number}"
