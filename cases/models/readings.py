"""What was measured. Readings are kept for good: a later one is added, an earlier one never overwritten."""

from __future__ import annotations

import json
from typing import Any, ClassVar

from django.db import models
from django.db.models import Q

from cases.domain.struck import StruckWhy
from cases.models.base import AppendOnly, ClientCreated, choices, one_of
from cases.models.markings import Marking
from cases.models.people import Person
from cases.models.teeth import Canal

LENGTH_METHODS = ("pre_operative_image", "ratio", "confirming_image", "apex_locator", "direct_sight")
JUNCTION_METHODS = ("cone_mark", "two_instruments", "image_estimate")


STRUCK = ("struck_at", "struck_by", "struck_why")


def struck_or_not() -> Q:
    """The condition of a constraint: either all three columns say who struck it, when and why, or none does."""
    struck = Q(one_of("struck_why", StruckWhy), struck_at__isnull=False, struck_by__isnull=False)
    return struck | Q(struck_at=None, struck_by=None, struck_why="")


class ReadingRow(ClientCreated, AppendOnly):
    """One reading: its canonical JSON text, who took it and when. `number` counts within the canal.

    One that was a mistake is struck: it stays, with who struck it, when and why, and counts for nothing.
    """

    moving: ClassVar[frozenset[str]] = frozenset(STRUCK)

    canal = models.ForeignKey(Canal, on_delete=models.PROTECT)
    number = models.PositiveIntegerField()
    method = models.CharField(max_length=20)
    text = models.TextField()
    actor = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    at = models.DateTimeField(auto_now_add=True)
    struck_at = models.DateTimeField(null=True)
    struck_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+", null=True)
    struck_why = models.CharField(max_length=11, choices=choices(StruckWhy), blank=True)

    class Meta:
        abstract = True

    @property
    def payload(self) -> Any:
        """What was read, as JSON data."""
        return json.loads(self.text)

    def __str__(self) -> str:
        return f"{self.method} {self.number}"


class LengthReading(ReadingRow):
    """A reading of a canal's length, as `planning.lengths.readings` describes it."""

    canal = models.ForeignKey(Canal, on_delete=models.PROTECT, related_name="readings")
    marking = models.ForeignKey(
        Marking, on_delete=models.PROTECT, related_name="readings", null=True, help_text="The marks it was taken from."
    )

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["canal", "number"], name="reading_number_unique"),
            models.CheckConstraint(condition=one_of("method", LENGTH_METHODS), name="reading_method_known"),
            models.CheckConstraint(condition=~Q(text=""), name="reading_has_text"),
            models.CheckConstraint(condition=struck_or_not(), name="reading_struck_by_somebody"),
        ]


class JunctionReading(ReadingRow):
    """A reading of where a canal joins another. The last one counts."""

    canal = models.ForeignKey(Canal, on_delete=models.PROTECT, related_name="junctions")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["canal", "number"], name="junction_number_unique"),
            models.CheckConstraint(condition=one_of("method", JUNCTION_METHODS), name="junction_method_known"),
            models.CheckConstraint(condition=~Q(text=""), name="junction_has_text"),
            models.CheckConstraint(condition=struck_or_not(), name="junction_struck_by_somebody"),
        ]
