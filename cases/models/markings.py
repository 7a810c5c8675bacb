"""What was marked on images. Kept for good: who marks again, or corrects another, adds a marking."""

from __future__ import annotations

from django.db import models
from django.db.models import F, Q

from cases.models.base import AppendOnly, ClientCreated
from cases.models.images import Image
from cases.models.people import Person


class Marking(ClientCreated, AppendOnly):
    """One person's marks on one image, and what they measured then. `number` counts within the image."""

    image = models.ForeignKey(Image, on_delete=models.PROTECT, related_name="markings")
    number = models.PositiveIntegerField()
    made_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    at = models.DateTimeField(auto_now_add=True)
    corrects = models.ForeignKey("self", on_delete=models.PROTECT, related_name="corrected_by", null=True)
    note = models.TextField(blank=True)
    text = models.TextField(help_text="The marks, as `planning.radiograph` takes them, in canonical JSON.")
    measured_text = models.TextField(help_text="What they measure, in canonical JSON.")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["image", "number"], name="marking_number_unique"),
            models.CheckConstraint(condition=Q(number__gte=1), name="marking_counts_from_1"),
            models.CheckConstraint(condition=~Q(corrects=F("id")), name="marking_corrects_another"),
        ]

    def __str__(self) -> str:
        return f"marking {self.number}"
