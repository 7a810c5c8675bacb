"""What was measured. Readings are kept for good: a later one is added, an earlier one never overwritten."""

from __future__ import annotations

import json
from typing import Any

from django.db import models
from django.db.models import Q

from cases.models.base import Fixed, Sent, one_of
from cases.models.markings import Marking
from cases.models.people import Person
from cases.models.teeth import Canal

LENGTH_METHODS = ("pre_operative_image", "ratio", "confirming_image", "apex_locator", "direct_sight")
JUNCTION_METHODS = ("cone_mark", "two_instruments", "image_estimate")


class Measured(Sent, Fixed):
    """One reading: its canonical JSON text, who took it and when. `number` counts within the canal."""

    canal = models.ForeignKey(Canal, on_delete=models.PROTECT)
    number = models.PositiveIntegerField()
    method = models.CharField(max_length=20)
    text = models.TextField()
    actor = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        abstract = True

    @property
    def told(self) -> Any:
        """What was read, as JSON data."""
        return json.loads(self.text)

    def __str__(self) -> str:
        return f"{self.method} {self.number}"


class LengthReading(Measured):
    """A reading of a canal's length, as `planning.readings` describes it."""

    canal = models.ForeignKey(Canal, on_delete=models.PROTECT, related_name="readings")
    marking = models.ForeignKey(
        Marking, on_delete=models.PROTECT, related_name="readings", null=True, help_text="The marks it was taken from."
    )

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["canal", "number"], name="reading_number_unique"),
            models.CheckConstraint(condition=one_of("method", LENGTH_METHODS), name="reading_method_known"),
            models.CheckConstraint(condition=~Q(text=""), name="reading_has_text"),
        ]


class JunctionReading(Measured):
    """A reading of where a canal joins another. The last one counts."""

    canal = models.ForeignKey(Canal, on_delete=models.PROTECT, related_name="junctions")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["canal", "number"], name="junction_number_unique"),
            models.CheckConstraint(condition=one_of("method", JUNCTION_METHODS), name="junction_method_known"),
            models.CheckConstraint(condition=~Q(text=""), name="junction_has_text"),
        ]
