"""What changed in a programme, for other systems to read in order."""

from __future__ import annotations

from django.db import models
from django.db.models import Q

from cases.domain.events.kinds import EventKind
from cases.domain.feed import STAMP_DIGITS, Bookmark, FeedKind
from cases.models.base import AppendOnly, choices, one_of
from cases.models.people import Person, Programme
from cases.models.teeth import Case
from planning.foundation.encoding import digest


class Change(AppendOnly):
    """One change, written in the transaction that made it. It gets its position once that has ended well, from whoever
    reads the feed next."""

    moving = frozenset({"position"})

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="+", db_index=False)
    position = models.PositiveBigIntegerField(null=True, help_text="In the programme's feed; null: not read yet.")
    kind = models.CharField(max_length=22, choices=choices(FeedKind))
    event = models.CharField(max_length=9, blank=True, choices=choices(EventKind))
    case = models.ForeignKey(Case, on_delete=models.PROTECT, related_name="changes", null=True, db_index=False)
    subject_id = models.UUIDField(help_text="Of what is to be read anew.")
    actor = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+", db_index=False)
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["programme", "position"], name="change_position_unique"),
            models.CheckConstraint(condition=one_of("kind", FeedKind), name="change_kind_known"),
            models.CheckConstraint(
                condition=Q(event="") | Q(kind=FeedKind.EVENT.value), name="change_event_only_of_events"
            ),
        ]
        indexes = [
            models.Index(fields=["programme", "id"], condition=Q(position=None), name="change_without_position"),
            models.Index(fields=["case", "position"], name="change_of_a_case"),
        ]

    def __str__(self) -> str:
        return f"{self.position}: {self.kind}"

    @property
    def bookmark(self) -> Bookmark:
        """Of somebody who has read up to this one, which has its position."""
        # To the millisecond, which is as much as a dump of the tables as JSON keeps.
        at = self.at.isoformat(timespec="milliseconds")
        return Bookmark(self.position or 0, digest(f"{self.subject_id} {at}")[:STAMP_DIGITS])
