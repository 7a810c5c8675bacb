"""Plan versions: what the planner was given and what it said, kept as the texts they were."""

from __future__ import annotations

import gzip
from typing import ClassVar, Self

from django.db import models
from django.db.models import Q

from cases.domain.plans.lifecycle import PlanState
from cases.models.base import HASH_LENGTH, AppendOnly, ClientCreated, choices, one_of
from cases.models.kits import Kit
from cases.models.people import Person, Programme
from cases.models.teeth import Case
from planning.lengths.readings import LengthState

BEFORE_GIVEN, BEFORE_PLAN, AFTER_PLAN = '{"given":', ',"plan":', "}"


class ToothPlanVersion(ClientCreated, AppendOnly):
    """One version of a case's plan. Its content never changes: save, update and delete refuse it, whoever asks.

    `hash` is SHA-256 over both texts. They lie in `PlanTexts`, so that a list of versions does not read them. Only the
    columns of `moving` change: where the version stands in its life, and which revision of the case it was last found
    to fit.
    """

    moving: ClassVar[frozenset[str]] = frozenset(
        {"state", "asked", "submitted_at", "decided_at", "case_revision", "not_released", "carried_from"}
    )

    case = models.ForeignKey(Case, on_delete=models.PROTECT, related_name="versions")
    # The case's programme once more, so that an index gives the plans that wait in one programme.
    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="+")
    number = models.PositiveIntegerField()
    author = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    created_at = models.DateTimeField(auto_now_add=True)
    # Where the kit came from, for the screen that changes the plan; the copy in the input is what counts.
    kit = models.ForeignKey(Kit, on_delete=models.PROTECT, related_name="+")
    technique_key = models.CharField(max_length=60)
    hash = models.CharField(max_length=HASH_LENGTH)
    intent_hash = models.CharField(max_length=HASH_LENGTH)
    planner_version = models.CharField(max_length=40)
    stops = models.PositiveIntegerField(help_text="Cautions that withhold steps.")
    cautions = models.PositiveIntegerField(help_text="Cautions that do not.")
    difficulty = models.CharField(max_length=10, blank=True, default="", help_text="Empty where none is counted.")

    state = models.CharField(max_length=10, choices=choices(PlanState), default=PlanState.DRAFT.value)
    asked = models.PositiveIntegerField(default=0, help_text="How often it was submitted.")
    submitted_at = models.DateTimeField(null=True, blank=True)
    decided_at = models.DateTimeField(null=True, blank=True)
    carried_from = models.ForeignKey(
        "self",
        on_delete=models.PROTECT,
        null=True,
        blank=True,
        related_name="+",
        help_text="The approved version whose approval holds for this one: nothing but lengths moved, by little.",
    )
    not_released = models.JSONField(default=list, blank=True, help_text="Canals that the approval leaves out.")
    case_revision = models.PositiveIntegerField()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["case", "number"], name="version_number_unique"),
            models.UniqueConstraint(fields=["case", "hash"], name="version_content_unique"),
            models.UniqueConstraint(
                fields=["case"], condition=~Q(state=PlanState.SUPERSEDED.value), name="one_version_stands"
            ),
            models.CheckConstraint(condition=one_of("state", PlanState), name="version_state_known"),
            models.CheckConstraint(condition=Q(number__gte=1), name="version_number_from_1"),
            models.CheckConstraint(
                condition=~Q(state__in=["waiting", "approved", "returned", "revoked"])
                | Q(asked__gte=1, submitted_at__isnull=False)
                | Q(carried_from__isnull=False),
                name="version_submitted_before_decided",
            ),
            models.CheckConstraint(
                condition=~Q(state__in=["approved", "returned", "revoked"]) | Q(decided_at__isnull=False),
                name="version_decided_has_time",
            ),
        ]
        indexes = [
            models.Index(
                fields=["programme", "-stops", "-cautions", "submitted_at", "id"],
                condition=Q(state=PlanState.WAITING.value),
                name="plans_that_wait",
            )
        ]

    def __str__(self) -> str:
        return f"version {self.number}, {self.state}"

    @property
    def input_text(self) -> str:
        """What the planner was given, as its canonical text."""
        return self.texts.both()[0]

    @property
    def output_text(self) -> str:
        """What the planner said."""
        return self.texts.both()[1]


class PlanTexts(AppendOnly):
    """Both texts of a version as one JSON object, `given` and `plan`, stored compressed just as it is sent."""

    version = models.OneToOneField(ToothPlanVersion, on_delete=models.PROTECT, primary_key=True, related_name="texts")
    packed = models.BinaryField(help_text="The object in gzip (RFC 1952).")
    given_length = models.PositiveIntegerField(help_text="Characters of what the planner was given.")

    def __str__(self) -> str:
        return f"texts of {self.version_id}"

    @classmethod
    def of(cls, version: ToothPlanVersion, *, plan_input: str, plan: str) -> Self:
        """The texts of a version, not saved yet. Equal texts give equal bytes: gzip's time of writing is left out."""
        whole = f"{BEFORE_GIVEN}{plan_input}{BEFORE_PLAN}{plan}{AFTER_PLAN}"
        packed = gzip.compress(whole.encode(), mtime=0)
        return cls(version=version, packed=packed, given_length=len(plan_input))

    def both(self) -> tuple[str, str]:
        """What the planner was given, and what it said, character by character: the version's hash is over these."""
        whole = gzip.decompress(self.packed).decode()
        start = len(BEFORE_GIVEN)
        # By its length, and not by reading the JSON: written anew it might differ in a character, and so in its hash.
        end = start + self.given_length
        return whole[start:end], whole[end + len(BEFORE_PLAN) : -len(AFTER_PLAN)]


class CanalPlan(AppendOnly):
    """What lists and searches need of one canal of a version. The version's text is the truth."""

    version = models.ForeignKey(ToothPlanVersion, on_delete=models.PROTECT, related_name="canal_plans")
    place = models.PositiveSmallIntegerField()
    canal = models.CharField(max_length=12, help_text="The canal's name when it was planned.")
    length_state = models.CharField(max_length=9, choices=choices(LengthState))
    stop_um = models.PositiveIntegerField(null=True)
    end_um = models.PositiveIntegerField(null=True)
    final_size = models.PositiveSmallIntegerField(null=True, help_text="None: a wide canal, no size chosen yet.")
    final_taper = models.PositiveSmallIntegerField()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["version", "canal"], name="canal_plan_unique"),
            models.UniqueConstraint(fields=["version", "place"], name="canal_plan_place_unique"),
            models.CheckConstraint(condition=one_of("length_state", LengthState), name="canal_plan_state_known"),
            models.CheckConstraint(
                condition=Q(end_um__isnull=True) | Q(stop_um__isnull=True) | Q(end_um__lte=models.F("stop_um")),
                name="canal_plan_never_past_the_stop",
            ),
        ]

    def __str__(self) -> str:
        return self.canal
