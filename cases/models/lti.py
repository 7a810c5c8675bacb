"""Platforms of courses (LTI 1.3), who came from them, and what they came to do."""

from __future__ import annotations

from django.db import models
from django.db.models import Case as Either
from django.db.models import OuterRef, Q, QuerySet, Subquery, Value, When
from django.db.models.functions import Coalesce
from django.utils import timezone

from cases.domain.lti import MOST_ADDRESS, MOST_ID, MOST_NAME, MOST_REFUSAL, Progress
from cases.domain.plans.lifecycle import PlanState
from cases.models.base import HASH_LENGTH, Identified, choices, one_of
from cases.models.people import Person, Programme
from cases.models.plans import ToothPlanVersion
from cases.models.teeth import Case


class LtiKey(models.Model):
    """The key by which platforms know this server, the only row; beside the platforms, as every server needs it."""

    id = models.PositiveSmallIntegerField(primary_key=True, default=1, editable=False)
    private_pem = models.TextField(editable=False)

    class Meta:
        constraints = [models.CheckConstraint(condition=Q(id=1), name="one_lti_key")]

    def __str__(self) -> str:
        return "LTI key"


class LtiPlatform(Identified):
    """Where a programme's courses are kept: one registration of this tool there."""

    programme = models.ForeignKey(Programme, on_delete=models.PROTECT, related_name="lti_platforms")
    name = models.CharField(max_length=MOST_NAME)
    issuer = models.CharField(max_length=MOST_ID)
    client_id = models.CharField(max_length=MOST_ID)
    deployment_ids = models.JSONField(help_text="JSON list of texts.")
    login_address = models.CharField(max_length=MOST_ADDRESS)
    token_address = models.CharField(max_length=MOST_ADDRESS)
    key_set_address = models.CharField(max_length=MOST_ADDRESS)
    token_audience = models.CharField(max_length=MOST_ADDRESS, blank=True, help_text="Empty: the token's address.")
    teachers_supervise = models.BooleanField(default=False)
    active = models.BooleanField(default=True)
    created_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["issuer", "client_id"], name="lti_client_once")]

    def __str__(self) -> str:
        return self.name


class LtiPerson(Identified):
    """Who somebody of a platform is here. Of them nothing is kept but the platform's own subject."""

    platform = models.ForeignKey(LtiPlatform, on_delete=models.PROTECT, related_name="people")
    subject = models.CharField(max_length=MOST_ID)
    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="lti_subjects")

    class Meta:
        constraints = [models.UniqueConstraint(fields=["platform", "subject"], name="lti_subject_once")]

    def __str__(self) -> str:
        return str(self.person)


class LtiLaunch(models.Model):
    """A launch that was used, kept while its token could be sent once more."""

    nonce = models.CharField(max_length=HASH_LENGTH, primary_key=True)
    at = models.DateTimeField(auto_now_add=True, db_index=True)

    def __str__(self) -> str:
        return f"{self.at:%Y-%m-%d %H:%M}"


_PROGRESS = {PlanState.WAITING: Progress.SUBMITTED, PlanState.APPROVED: Progress.APPROVED}


def _progress() -> Coalesce:
    """By the plan that stands in the work's case, if one does."""
    stands = ToothPlanVersion.objects.filter(case=OuterRef("case")).exclude(state=PlanState.SUPERSEDED)
    whens = (When(state=state.value, then=Value(progress.value)) for state, progress in _PROGRESS.items())
    progress = stands.annotate(progress=Either(*whens, output_field=models.CharField())).values("progress")
    return Coalesce(Subquery(progress), Value(Progress.UNDER_WAY.value))


class LtiWorkSet(QuerySet["LtiWork"]):
    def with_progress(self) -> LtiWorkSet:
        """Brings `progress`."""
        return self.annotate(progress=_progress())

    def untold(self) -> LtiWorkSet:
        """Those whose platform takes a grade and was last told another progress than there is."""
        return self.exclude(progress_told=_progress()).exclude(line_item="")


class LtiWork(Identified):
    """The case in which a student does an assignment, one for each link and student, and what was told of it."""

    person = models.ForeignKey(LtiPerson, on_delete=models.PROTECT, related_name="work")
    deployment_id = models.CharField(max_length=MOST_ID)
    link_id = models.CharField(max_length=MOST_ID)
    case = models.OneToOneField(Case, on_delete=models.PROTECT, related_name="lti_work")
    line_item = models.CharField(max_length=MOST_ADDRESS, blank=True, help_text="Empty: the platform takes no grade.")
    record_address = models.CharField(max_length=MOST_ADDRESS, blank=True)
    progress_told = models.CharField(
        max_length=9,
        choices=choices(Progress),
        default=Progress.UNDER_WAY.value,
        help_text="What the platform took last; while nothing was asked for it is told nothing.",
    )
    sent_at = models.DateTimeField(null=True, help_text="Timestamp of the grade sent last; the next one's is later.")
    tries = models.PositiveSmallIntegerField(default=0)
    first_tried_at = models.DateTimeField(null=True)
    due_at = models.DateTimeField(
        default=timezone.now, null=True, help_text="A worker that is at it moves it on. Null: given up."
    )
    refusal = models.CharField(max_length=MOST_REFUSAL, blank=True, help_text="Why the last one was not taken.")
    created_at = models.DateTimeField(auto_now_add=True)

    objects = LtiWorkSet.as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["person", "deployment_id", "link_id"], name="lti_work_once"),
            models.CheckConstraint(condition=one_of("progress_told", Progress), name="lti_progress_known"),
        ]

    def __str__(self) -> str:
        return f"{self.person}, {self.created_at:%Y-%m-%d}"
