"""Where other systems are told of changes, and each message that they are sent."""

from __future__ import annotations

from django.db import models
from django.db.models import F, Q
from django.utils import timezone

from cases.domain.webhooks import MOST_ADDRESS, MOST_SECRET, DeliveryState, NoAnswer, WebhookState
from cases.models.access_keys import Service
from cases.models.base import Identified, choices, one_of
from cases.models.feed import Change
from cases.models.people import Person, Programme
from cases.models.teeth import Case


class Webhook(Identified):
    """An address that is told of a programme's changes, and how far it has been: every change up to `reached` has a
    delivery or is of no kind that was chosen."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="webhooks")
    service = models.ForeignKey(
        Service, on_delete=models.PROTECT, related_name="webhooks", null=True, help_text="Null: the coordinator's."
    )
    address = models.CharField(max_length=MOST_ADDRESS)
    kinds = models.JSONField(help_text="JSON list of kinds of changes; empty: all.")
    state = models.CharField(max_length=8, choices=choices(WebhookState), default=WebhookState.ACTIVE.value)
    reached = models.PositiveBigIntegerField(help_text="Position in the programme's feed.")
    # A secret has to be had again to sign with it, so that it cannot be kept as a hash.
    secret = models.CharField(max_length=MOST_SECRET, editable=False)
    secret_before = models.CharField(max_length=MOST_SECRET, blank=True, editable=False)
    secret_before_until = models.DateTimeField(null=True)
    revision = models.PositiveIntegerField(default=1, help_text="Counts changes by whoever keeps it.")
    given_up_at = models.DateTimeField(null=True)
    lease = models.UUIDField(null=True, help_text="Of the worker that is at it until `free_at`.")
    free_at = models.DateTimeField(default=timezone.now, help_text="From then on a worker may take it up.")
    made_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    created_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.CheckConstraint(condition=one_of("state", WebhookState), name="webhook_state_known"),
            models.CheckConstraint(
                condition=Q(state=WebhookState.GIVEN_UP.value, given_up_at__isnull=False)
                | (~Q(state=WebhookState.GIVEN_UP.value) & Q(given_up_at=None)),
                name="webhook_given_up_at_some_time",
            ),
        ]

    def __str__(self) -> str:
        return self.address


class Delivery(Identified):
    """One message to one webhook. It waits until it is delivered; what was delivered is the log."""

    webhook = models.ForeignKey(Webhook, on_delete=models.CASCADE, related_name="deliveries", db_index=False)
    change = models.ForeignKey(
        Change, on_delete=models.PROTECT, related_name="+", null=True, db_index=False, help_text="Null: a test message."
    )
    # As of the change: what waits is asked for by them.
    position = models.PositiveBigIntegerField(null=True)
    case = models.ForeignKey(Case, on_delete=models.PROTECT, related_name="+", null=True, db_index=False)
    state = models.CharField(max_length=9, choices=choices(DeliveryState), default=DeliveryState.WAITING.value)
    tries = models.PositiveSmallIntegerField(default=0)
    due_at = models.DateTimeField()
    first_tried_at = models.DateTimeField(null=True)
    last_tried_at = models.DateTimeField(null=True)
    status = models.PositiveSmallIntegerField(null=True, help_text="Of the last answer.")
    no_answer = models.CharField(max_length=11, blank=True, choices=choices(NoAnswer))
    created_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(
                fields=["webhook", "position"], condition=Q(state="waiting"), name="delivery_waits_once"
            ),
            models.CheckConstraint(condition=one_of("state", DeliveryState), name="delivery_state_known"),
            models.CheckConstraint(
                condition=Q(first_tried_at=None) | Q(last_tried_at__gte=F("first_tried_at")),
                name="delivery_tried_in_order",
            ),
        ]
        indexes = [
            models.Index(fields=["webhook", "-created_at", "-id"], name="delivery_log"),
            models.Index(fields=["webhook", "due_at"], condition=Q(state="waiting"), name="delivery_waiting"),
            models.Index(fields=["created_at"], name="delivery_by_time"),
        ]

    def __str__(self) -> str:
        return f"{self.position}: {self.state}"

    @property
    def why_no_answer(self) -> str | None:
        return self.no_answer or None
