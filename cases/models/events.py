"""What was done, as the devices told it."""

from __future__ import annotations

from django.db import models
from django.db.models import Q

from cases.domain.events.kinds import EventKind, NotChecked
from cases.domain.events.payloads import EventPayload
from cases.models.base import HASH_LENGTH, AppendOnly, ClientCreated, choices, one_of
from cases.models.kits import Kit
from cases.models.people import Person, Programme
from cases.models.plans import ToothPlanVersion
from cases.models.teeth import Case


class RunningWork(models.Model):
    """Where the work on a case stands, for lists. It is made anew from the events whenever some come in: they alone are
    the truth."""

    case = models.OneToOneField(Case, on_delete=models.CASCADE, primary_key=True, related_name="running_work")
    # The case's programme once more, so that an index gives the list of one programme.
    programme = models.ForeignKey(Programme, on_delete=models.CASCADE, related_name="+")
    position = models.PositiveIntegerField(help_text="The last event it is made from.")
    halted = models.BooleanField()
    finished = models.BooleanField(help_text="Every canal is finished or the visit is closed, and nothing is due.")
    on_site = models.ForeignKey(
        Person, on_delete=models.PROTECT, null=True, related_name="+", help_text="The licensed clinician in the room."
    )
    taken_over = models.ForeignKey(
        Person, on_delete=models.PROTECT, null=True, related_name="+", help_text="The supervisor who works it now."
    )
    waiting_since = models.DateTimeField(null=True, help_text="Since when a supervisor's sign-off is due.")
    step_since = models.DateTimeField(null=True, help_text="Since when the present step is in hand.")
    changed_at = models.DateTimeField()
    text = models.TextField(help_text="The canals and the step in hand, as canonical JSON.")
    learned = models.TextField(
        default="", help_text="What was last worked out to be expected of the canals, as canonical JSON."
    )

    class Meta:
        indexes = [
            models.Index(
                fields=["programme", "-halted", "waiting_since", "case"],
                condition=Q(finished=False, waiting_since__isnull=False),
                name="work_that_waits_longest",
            ),
            models.Index(
                fields=["programme", "-changed_at", "case"],
                condition=Q(finished=False, waiting_since__isnull=True),
                name="work_that_goes_on",
            ),
        ]

    def __str__(self) -> str:
        return f"work after {self.position}"


class FoldKept(models.Model):
    """The fold of a case's events, from which the next ones are folded on. The events alone are the truth."""

    case = models.OneToOneField(Case, on_delete=models.CASCADE, primary_key=True, related_name="+")
    version = models.ForeignKey(
        ToothPlanVersion, on_delete=models.CASCADE, related_name="+", help_text="The plan in force."
    )
    position = models.PositiveIntegerField(help_text="Of the last event in it.")
    last_id = models.UUIDField(help_text="The last event in it: a server that was restored has others.")
    code = models.CharField(max_length=HASH_LENGTH, help_text="SHA-256 of the code that folded; no other reads it.")
    text = models.TextField(help_text="The fold as JSON whose mappings keep their order.")

    def __str__(self) -> str:
        return f"fold up to {self.position}"


class InstrumentUse(models.Model):
    """An instrument of a kit entered a canal, or was discarded; made from the events whenever some come in.

    A student works with a set of their own, so uses are counted for each student and kit.
    """

    event = models.OneToOneField("TreatmentEvent", on_delete=models.CASCADE, primary_key=True, related_name="+")
    case = models.ForeignKey(Case, on_delete=models.CASCADE, related_name="instrument_uses")
    kit = models.ForeignKey(Kit, on_delete=models.PROTECT, related_name="+")
    student = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    instrument = models.CharField(max_length=60, help_text="Its key in the kit.")
    discarded = models.BooleanField(help_text="It was discarded: the next use is of a new one.")
    at = models.DateTimeField()

    class Meta:
        indexes = [models.Index(fields=["kit", "student", "at"], name="uses_of_a_set_in_order")]

    def __str__(self) -> str:
        return f"{self.instrument}, {'discarded' if self.discarded else 'used'}"


class TreatmentEvent(ClientCreated, AppendOnly):
    """One thing done or seen. Only added to; an undo is an event too.

    The order is `position`, given here under the case's lock. The device's time is shown and never used to order:
    its clock may be wrong.
    """

    # Constraints below begin with the case, and nobody asks for a version's events: neither needs an index of its own.
    case = models.ForeignKey(Case, on_delete=models.PROTECT, related_name="events", db_index=False)
    version = models.ForeignKey(ToothPlanVersion, on_delete=models.PROTECT, related_name="events", db_index=False)
    position = models.PositiveIntegerField()
    server_time = models.DateTimeField(auto_now_add=True)
    actor = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    device = models.UUIDField()
    device_seq = models.PositiveIntegerField()
    device_time = models.DateTimeField()
    seen_position = models.PositiveIntegerField(help_text="The last position the device knew.")
    plan_hash = models.CharField(max_length=HASH_LENGTH)
    canal = models.CharField(max_length=12, blank=True)
    node = models.CharField(max_length=120, blank=True)
    kind = models.CharField(max_length=9, choices=choices(EventKind))
    schema_version = models.PositiveSmallIntegerField(default=1)
    not_checked = models.CharField(
        max_length=9, blank=True, choices=choices(NotChecked), help_text="What of it could not be checked, if anything."
    )
    text = models.TextField(help_text="Body as canonical JSON.")
    # Not stored: what the text says, on a row that was just made from it.
    payload: EventPayload | None = None

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["case", "position"], name="event_position_unique"),
            models.UniqueConstraint(fields=["case", "device", "device_seq"], name="event_of_device_unique"),
            models.CheckConstraint(condition=one_of("kind", EventKind), name="event_kind_known"),
            models.CheckConstraint(condition=one_of("not_checked", ["", *NotChecked]), name="event_not_checked_known"),
            models.CheckConstraint(condition=Q(position__gte=1, device_seq__gte=1), name="event_counts_from_1"),
            models.CheckConstraint(condition=Q(seen_position__lt=models.F("position")), name="event_saw_only_earlier"),
        ]

    def __str__(self) -> str:
        return f"{self.position}: {self.kind}"
