"""What supervisors decided, and what they said of which canal."""

from __future__ import annotations

from django.db import models
from django.db.models import Q

from cases.domain.plans.lifecycle import Decision
from cases.models.base import AppendOnly, ClientCreated, choices, one_of
from cases.models.people import Person
from cases.models.plans import CanalPlan, ToothPlanVersion


class Review(ClientCreated, AppendOnly):
    """A decision on one version, for one asking. It is never edited: a changed plan is asked for again, and an approval
    that is withdrawn gets a revocation beside it."""

    version = models.ForeignKey(ToothPlanVersion, on_delete=models.PROTECT, related_name="reviews")
    asked = models.PositiveIntegerField(help_text="Which submission of the version it answers.")
    supervisor = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="reviews")
    decision = models.CharField(max_length=8, choices=choices(Decision))
    note = models.TextField(blank=True)
    acknowledged = models.JSONField(
        default=list, blank=True, help_text="What must be put right and was seen by its name: code and canal."
    )
    own_lengths = models.JSONField(
        default=list, blank=True, help_text="What the supervisor measured beside the plan: canal and length_mm."
    )
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["version", "asked"], name="decided_once_per_asking"),
            models.CheckConstraint(condition=one_of("decision", Decision), name="review_decision_known"),
            models.CheckConstraint(condition=Q(asked__gte=1), name="review_after_submission"),
        ]

    def __str__(self) -> str:
        return f"{self.decision} {self.at:%Y-%m-%d %H:%M}"


class Revocation(ClientCreated, AppendOnly):
    """An approval that was withdrawn: by whom, when, why. The approval stays where it is, and so does this."""

    version = models.ForeignKey(ToothPlanVersion, on_delete=models.PROTECT, related_name="revocations")
    asked = models.PositiveIntegerField(help_text="Which submission of the version had been approved.")
    actor = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    reason = models.TextField()
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["version", "asked"], name="revoked_once_per_asking"),
            models.CheckConstraint(condition=~Q(reason=""), name="revocation_has_a_reason"),
        ]

    def __str__(self) -> str:
        return f"withdrawn {self.at:%Y-%m-%d %H:%M}"


class ReviewRemark(AppendOnly):
    """What was said of one canal."""

    review = models.ForeignKey(Review, on_delete=models.PROTECT, related_name="remarks")
    canal_plan = models.ForeignKey(CanalPlan, on_delete=models.PROTECT, related_name="remarks")
    text = models.TextField()
    returned = models.BooleanField(default=False, help_text="The approval leaves this canal out.")

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["review", "canal_plan"], name="one_remark_a_canal"),
            models.CheckConstraint(condition=~Q(text=""), name="remark_says_something"),
        ]

    def __str__(self) -> str:
        return self.text
