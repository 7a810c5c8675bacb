"""Plans of a case: looked at, kept, asked for, decided on."""

from __future__ import annotations

from typing import Annotated, Any
from uuid import UUID

from django.http import HttpResponse
from drf_spectacular.utils import OpenApiParameter, extend_schema
from rest_framework import serializers
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, View, answer, as_it_lies, given, me
from cases.api.etags import maybe_seen_tag, seen_tag
from cases.api.fields import MOST_COUNT, Each, Id, Listing, Strict, Text, Value, Whole
from cases.api.v1 import example_answers, examples
from cases.api.v1.shapes import ReviewShown, VersionListed, VersionShown
from cases.domain.errors import (
    Conflict,
    EmptyPlan,
    MoveNotPossible,
    NoSuchCanal,
    NotAcknowledged,
    NotAllowed,
    NothingSaid,
    NotUsable,
    PlanStale,
    ReasonMissing,
    SentDifferently,
)
from cases.domain.plans.acknowledged import Named
from cases.domain.plans.changes import GivenChanges, PlanChanges
from cases.domain.plans.lifecycle import Decision
from cases.domain.plans.own_lengths import OwnLength
from cases.queries import seen
from cases.queries.plans import changes, version_shown, versions_listed
from cases.services.planning import plans, release, reviews, revocation
from cases.services.planning.plan_input import Asked
from cases.services.planning.reviews import Remark
from planning.api import examples as planning_examples
from planning.api.refusals import OF_A_PLAN, refuses
from planning.api.values import serializer_of
from planning.contract.plan_input import Choices
from planning.contract.plan_value import Plan
from planning.foundation.counts import at_most
from planning.foundation.encoding import encode
from planning.foundation.errors import LengthOutOfBounds, OutOfBounds

TAGS = ["plan"]
MOST_CANALS = at_most("canals").most
IF_MATCH = OpenApiParameter(
    "If-Match", str, OpenApiParameter.HEADER, required=True, description="The hash that was on the screen, as ETag."
)
IF_MATCH_OPTIONAL = OpenApiParameter(
    "If-Match", str, OpenApiParameter.HEADER, description="The hash that was on the screen, as ETag."
)
AGAINST = OpenApiParameter("against", int, description="Number of the earlier version; default: last decided on.")


class AskedGiven(Strict):
    """What a plan is asked for with: means and choices. Whether the programme has them is looked up afterwards."""

    kit_id = Id()
    technique = Text(max_length=60, help_text="Key of a technique of the programme's list.")
    choices = Value(Choices)


class VersionGiven(AskedGiven):
    """A version of the plan to be made."""

    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")


class RemarkGiven(Strict):
    """One remark on one canal. The text is trimmed and has to say something."""

    canal = Text(max_length=12)
    text = Text()
    returned = Value(
        bool, required=False, help_text="With an approval: this canal is not released, its partner neither."
    )


class ReviewGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    decision = Value(Decision)
    note = Text(required=False, allow_blank=True)
    remarks = Each(child=RemarkGiven(), required=False, max_length=MOST_CANALS)
    acknowledged = Value(
        Annotated[tuple[Named, ...], at_most("overrides")],
        required=False,
        help_text="With an approval: every caution of severity `stop` that was not let pass, by its name.",
    )
    own_lengths = Value(
        Annotated[tuple[OwnLength, ...], at_most("canals")],
        required=False,
        help_text="What the supervisor measured beside the plan, to compare: the plan stays as it is.",
    )


class ReleaseGiven(Strict):
    canals = Each(child=Text(max_length=12), min_length=1, max_length=MOST_CANALS)


class RevokeGiven(Strict):
    id = Id(required=False, help_text="Made by the sender, so that sending again is harmless.")
    reason = Text()


class VersionList(Listing):
    results = VersionListed(many=True)


class ChangesShown(serializers.Serializer[Any]):
    """A comparison, or none: an answer is always an object."""

    changes = Value(PlanChanges, allow_null=True, help_text="Null where there is no earlier version to compare with.")


def _asked(read: dict[str, Any]) -> Asked:
    return Asked(kit_id=read["kit_id"], technique=read["technique"], choices=read["choices"])


class PreviewView(View):
    keeps_answers = False

    @extend_schema(
        operation_id="case_preview",
        tags=TAGS,
        summary="The plan as it would be",
        description="Nothing is stored. Change one choice and see what else moves.",
        request=AskedGiven,
        extensions=refuses(NotAllowed, NotUsable, *OF_A_PLAN),
        responses=serializer_of(Plan),
        examples=[examples.ASKED, planning_examples.PLAN],
    )
    def post(self, request: Request, case_id: UUID) -> HttpResponse:
        case = seen.case(me(request), case_id)
        made = plans.preview(actor=me(request), case=case, asked=_asked(given(AskedGiven, request)))
        return as_it_lies(request, made.packed)


class PreviewChangesGiven(AskedGiven):
    """What a plan would be asked for with, and the version to compare it with."""

    against = Whole(min_value=1, max_value=MOST_COUNT, help_text="Number of the version to compare with.")


class PreviewChangesView(View):
    keeps_answers = False

    @extend_schema(
        operation_id="case_preview_changes",
        tags=TAGS,
        summary="How the plan's input would differ from a version's",
        description="Every field of it, each with what it bears on; no plan is made.",
        request=PreviewChangesGiven,
        extensions=refuses(NotAllowed, NotUsable, OutOfBounds),
        responses=serializer_of(GivenChanges),
        examples=[examples.ASKED_AGAINST],
    )
    def post(self, request: Request, case_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        read = given(PreviewChangesGiven, request)
        return Response(
            encode(plans.preview_changes(actor=me(request), case=case, asked=_asked(read), against=read["against"]))
        )


class VersionsView(View):
    short_list = True
    shape, shape_after = VersionListed, VersionShown

    @extend_schema(
        operation_id="plan_versions_list", tags=TAGS, summary="Versions of a case's plan", responses=VersionList
    )
    def get(self, request: Request, case_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        return answer(VersionList, {"results": versions_listed(case)})

    @extend_schema(
        operation_id="plan_versions_create",
        tags=TAGS,
        summary="Keep the plan as a version",
        description="It stands in the place of any other version: one that waits or is approved is superseded. The "
        "same content is the same version. 201 for a new one, 200 for one that was there.",
        parameters=[LOCATION],
        request=VersionGiven,
        extensions=refuses(NotAllowed, SentDifferently, NotUsable, *OF_A_PLAN),
        responses={200: VersionShown, 201: VersionShown},
        examples=[examples.ASKED],
    )
    def post(self, request: Request, case_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        read = given(VersionGiven, request)
        row, created = plans.propose(actor=me(request), case=case, asked=_asked(read), id=read.get("id"))
        return _shown(self, row.pk, created=created, at=f"plan-versions/{row.pk}")


class VersionView(View):
    shape = VersionShown

    @extend_schema(
        operation_id="plan_version_retrieve",
        tags=TAGS,
        summary="A version of a plan",
        description="What was decided, and where the case's plan stands; with `expand` all it rests on and "
        "all it says. ETag: the hash, and what else is shown.",
        responses=VersionShown,
    )
    def get(self, request: Request, version_id: UUID) -> Response:
        return _shown(self, seen.version(me(request), version_id).pk)


class SubmitView(View):
    shape_after = VersionShown

    @extend_schema(
        operation_id="plan_version_submit",
        tags=TAGS,
        summary="Ask for approval",
        description="409 where the case has changed since: plan it again. If-Match is honoured where it is sent: "
        "412 for another hash than the version's.",
        parameters=[IF_MATCH_OPTIONAL],
        request=None,
        extensions=refuses(NotAllowed, MoveNotPossible, PlanStale, ReasonMissing, EmptyPlan),
        responses=VersionShown,
    )
    def post(self, request: Request, version_id: UUID) -> Response:
        seen_hash = maybe_seen_tag(request)
        version = plans.submit(actor=me(request), version=seen.version(me(request), version_id), seen_hash=seen_hash)
        return _shown(self, version.pk)


class WithdrawView(View):
    shape_after = VersionShown

    @extend_schema(
        operation_id="plan_version_withdraw",
        tags=TAGS,
        summary="Take the asking back",
        request=None,
        extensions=refuses(NotAllowed, MoveNotPossible),
        responses=VersionShown,
    )
    def post(self, request: Request, version_id: UUID) -> Response:
        version = plans.withdraw(actor=me(request), version=seen.version(me(request), version_id))
        return _shown(self, version.pk)


class ReviewsView(View):
    @extend_schema(
        operation_id="reviews_create",
        tags=TAGS,
        summary="Approve or return a plan",
        description="By a supervisor of the programme, for exactly the version on the screen: its hash goes with it as "
        "If-Match (428 without, 412 for another). A returned plan needs a note or a remark. An approval may leave "
        "canals out: those whose remark says `returned`, and what ends in one with them. 409 where another supervisor "
        "was first or the case has changed; 422, `not-acknowledged`, where an approval does not name every caution of "
        "severity `stop` that was not let pass.",
        parameters=[IF_MATCH, LOCATION],
        request=ReviewGiven,
        extensions=refuses(
            NotAllowed,
            SentDifferently,
            MoveNotPossible,
            PlanStale,
            NothingSaid,
            NoSuchCanal,
            NotAcknowledged,
            NotUsable,
            LengthOutOfBounds,
        ),
        responses={200: ReviewShown, 201: ReviewShown},
        examples=[examples.REVIEW, example_answers.REVIEW],
    )
    def post(self, request: Request, version_id: UUID) -> Response:
        version = seen.version(me(request), version_id)
        read = given(ReviewGiven, request)
        read["remarks"] = [Remark(**remark) for remark in read.get("remarks", [])]
        row, created = reviews.decide(supervisor=me(request), version=version, seen_hash=seen_tag(request), **read)
        return answer(ReviewShown, row, created=created, at=f"plan-versions/{version_id}/reviews/{row.pk}")


class ReviewView(View):
    @extend_schema(operation_id="review_retrieve", tags=TAGS, summary="A decision", responses=ReviewShown)
    def get(self, request: Request, version_id: UUID, review_id: UUID) -> Response:
        return answer(ReviewShown, seen.review(me(request), version_id, review_id))


class ReleaseView(View):
    shape_after = VersionShown

    @extend_schema(
        operation_id="plan_version_release",
        tags=TAGS,
        summary="Release canals that an approval left out",
        description="By a supervisor, for exactly the version on the screen (If-Match). A canal goes together with the "
        "one it ends in. Harmless where it was released before. 409 where the plan is not approved or the case has "
        "changed.",
        parameters=[IF_MATCH],
        request=ReleaseGiven,
        extensions=refuses(NotAllowed, Conflict, PlanStale, NoSuchCanal, NotUsable),
        responses=VersionShown,
        examples=[examples.RELEASE],
    )
    def post(self, request: Request, version_id: UUID) -> Response:
        version = seen.version(me(request), version_id)
        read = given(ReleaseGiven, request)
        row = release.release(supervisor=me(request), version=version, seen_hash=seen_tag(request), **read)
        return _shown(self, row.pk)


class RevokeView(View):
    shape_after = VersionShown

    @extend_schema(
        operation_id="plan_version_revoke",
        tags=TAGS,
        summary="Withdraw an approval",
        description="By the supervisor who gave it or a coordinator, with a reason, for exactly the version on the "
        "screen (If-Match). Work halts at its next step until a plan is approved again; what was done stays, and so "
        "does the approval as an entry. 409 where the plan is not approved. 201, or 200 where it was sent before.",
        parameters=[IF_MATCH],
        request=RevokeGiven,
        extensions=refuses(NotAllowed, SentDifferently, Conflict, NothingSaid),
        responses={200: VersionShown, 201: VersionShown},
        examples=[examples.REVOKE],
    )
    def post(self, request: Request, version_id: UUID) -> Response:
        version = seen.version(me(request), version_id)
        read = given(RevokeGiven, request)
        row, created = revocation.revoke(actor=me(request), version=version, seen_hash=seen_tag(request), **read)
        return _shown(self, row.version_id, created=created)


class ChangesView(View):
    query = {"GET": (AGAINST.name,)}

    @extend_schema(
        operation_id="plan_version_changes",
        tags=TAGS,
        summary="What changed since an earlier version",
        parameters=[AGAINST],
        extensions=refuses(NotUsable),
        responses=ChangesShown,
    )
    def get(self, request: Request, version_id: UUID) -> Response:
        version = seen.version(me(request), version_id)
        return answer(ChangesShown, {"changes": changes(version, _against(request))})


def _against(request: Request) -> int | None:
    """Raises NotUsable for what is no number of a version."""
    value = request.query_params.get("against")
    if value is None:
        return None
    if not (value.isascii() and value.isdecimal() and len(value) < 10):
        raise NotUsable(reason="'against' is the number of a version.", at=("against",))
    return int(value)


def _shown(view: View, version_id: UUID, *, created: bool = False, at: str = "") -> Response:
    """The version as it is now, with what the view's query asks for."""
    texts = not set(VersionShown.heavy).isdisjoint(view.chosen or ())
    shown = version_shown(version_id, texts=texts)
    return answer(VersionShown, shown, state=shown.row.hash, created=created, at=at)
