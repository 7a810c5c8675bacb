"""The computing addresses. Each parses, calls the planner once and shapes the answer."""

from __future__ import annotations

from typing import Any

from drf_spectacular.utils import OpenApiParameter, extend_schema
from rest_framework.decorators import api_view, permission_classes
from rest_framework.exceptions import NotFound
from rest_framework.permissions import AllowAny
from rest_framework.request import Request
from rest_framework.response import Response

from planning import anatomy
from planning.anatomy import Tooth, ToothName
from planning.anatomy.curvature import Curvature
from planning.anatomy.notation import NotationMissing
from planning.api import answers, examples
from planning.api.refusals import OF_A_PLAN, refuses
from planning.api.requests import (
    CurvatureRequest,
    DifficultyFactors,
    InstrumentSizes,
    LengthRequest,
    MeasureRequest,
    PlanRequest,
    RunSheetAnswer,
    RunSheetRequest,
    Techniques,
    TechniqueText,
    Teeth,
    TwoViewsRequest,
)
from planning.api.values import serializer_of
from planning.contract.plan_value import Plan
from planning.foundation.encoding import decode, encode
from planning.foundation.errors import (
    ChoiceNotPossible,
    LengthOutOfBounds,
    OutOfBounds,
    PointsDoNotFit,
    ReadingNotUsable,
    ScaleNotUsable,
    TechniqueNotUsable,
    TooMuchWork,
    UnknownTooth,
    ViewsDoNotFit,
)
from planning.lengths.readings import Length
from planning.radiograph import Measured
from planning.radiograph.views import TwoViewsRead
from planning.whole_tooth.technique_check import TechniqueChecked

REFERENCE, COMPUTE = ["reference"], ["compute"]
READ = ["GET", "HEAD"]


def short_list(view: Any) -> Any:
    """Says of a view that it answers a list of few rows: whoever serves it makes pages of it."""
    view.cls.short_list = True
    return view


@short_list
@extend_schema(
    operation_id="teeth_list",
    tags=REFERENCE,
    summary="All 52 teeth",
    description="Names in three notations, usual canals, what else to look for, published lengths. Open to all.",
    responses=serializer_of(Teeth),
    examples=[examples.TEETH],
)
@api_view(READ)
@permission_classes([AllowAny])
def teeth_list(request: Request) -> Response:
    return Response(encode(answers.all_teeth()))


@extend_schema(
    operation_id="teeth_retrieve",
    tags=REFERENCE,
    summary="One tooth",
    description="By its ISO 3950 designation. For other notations ask `compute/tooth`. Open to all.",
    parameters=[OpenApiParameter("iso", str, OpenApiParameter.PATH, description="ISO 3950 designation")],
    responses=serializer_of(Tooth),
    examples=[examples.TOOTH],
)
@api_view(READ)
@permission_classes([AllowAny])
def teeth_retrieve(request: Request, iso: str) -> Response:
    try:
        return Response(encode(answers.tooth_of_iso(iso)))
    except UnknownTooth as refusal:
        raise NotFound(str(refusal)) from None


@short_list
@extend_schema(
    operation_id="techniques_list",
    tags=REFERENCE,
    summary="The techniques that come with the planner",
    description="A programme may copy one and make it its own. Open to all.",
    responses=serializer_of(Techniques),
    examples=[examples.TECHNIQUES],
)
@api_view(READ)
@permission_classes([AllowAny])
def techniques_list(request: Request) -> Response:
    return Response(encode(answers.techniques()))


@short_list
@extend_schema(
    operation_id="difficulty_factors_list",
    tags=REFERENCE,
    summary="What can make a case difficult",
    description="Factors with their levels. Those a plan works out may be recorded as well; the higher level counts. "
    "One high factor or three moderate ones make a case high. Open to all.",
    responses=serializer_of(DifficultyFactors),
    examples=[examples.DIFFICULTY_FACTORS],
)
@api_view(READ)
@permission_classes([AllowAny])
def difficulty_factors_list(request: Request) -> Response:
    return Response(encode(answers.difficulty_factors()))


@short_list
@extend_schema(
    operation_id="instrument_sizes_list",
    tags=REFERENCE,
    summary="The ISO 3630-1 series",
    description="Sizes, colours, and the diameter 16 mm from the tip at taper .02. Open to all.",
    responses=serializer_of(InstrumentSizes),
    examples=[examples.INSTRUMENT_SIZES],
)
@api_view(READ)
@permission_classes([AllowAny])
def instrument_sizes_list(request: Request) -> Response:
    return Response(encode(answers.instrument_sizes()))


@extend_schema(
    operation_id="compute_tooth",
    tags=COMPUTE,
    summary="A tooth from its name in any notation",
    description="A designation without its notation is refused, with the teeth it could be.",
    request=serializer_of(ToothName),
    extensions=refuses(UnknownTooth, NotationMissing),
    responses=serializer_of(Tooth),
    examples=[examples.TOOTH_NAME, examples.TOOTH],
)
@api_view(["POST"])
def compute_tooth(request: Request) -> Response:
    return Response(encode(anatomy.find(decode(ToothName, request.data))))


@extend_schema(
    operation_id="compute_technique_check",
    tags=COMPUTE,
    summary="Whether a technique can be used",
    description="The text of a technique of one's own, as TOML. It is read, held against the rules of techniques and "
    "tried out in every setting it is for: every walk through its order of work has to end. What is wrong is answered "
    "all at once, each fault with its `line`. Nothing is stored: a coordinator adds it to the programme's techniques.",
    request=serializer_of(TechniqueText),
    extensions=refuses(TechniqueNotUsable),
    responses=serializer_of(TechniqueChecked),
    examples=[examples.TECHNIQUE_TEXT, examples.TECHNIQUE_CHECKED],
)
@api_view(["POST"])
def compute_technique_check(request: Request) -> Response:
    return Response(encode(answers.technique_check(decode(TechniqueText, request.data))))


@extend_schema(
    operation_id="compute_length",
    tags=COMPUTE,
    summary="The working length of one canal",
    description="Readings are ranked, never averaged. Readings that disagree leave the length unsettled.",
    request=serializer_of(LengthRequest),
    extensions=refuses(LengthOutOfBounds, ReadingNotUsable, OutOfBounds, ChoiceNotPossible),
    responses=serializer_of(Length),
    examples=[examples.LENGTH_REQUEST, examples.LENGTH],
)
@api_view(["POST"])
def compute_length(request: Request) -> Response:
    return Response(encode(answers.length(decode(LengthRequest, request.data))))


@extend_schema(
    operation_id="compute_curvature",
    tags=COMPUTE,
    summary="Angle, radius and arc of a curved canal",
    description="From points tapped on an image: by Schneider, by tangents, by three points, as one arc, and in space "
    "from two views; with what each published scheme calls the angle. The schemes differ.",
    request=serializer_of(CurvatureRequest),
    extensions=refuses(PointsDoNotFit, ChoiceNotPossible, OutOfBounds),
    responses=serializer_of(Curvature),
    examples=[examples.CURVATURE_REQUEST, examples.CURVATURE],
)
@api_view(["POST"])
def compute_curvature(request: Request) -> Response:
    return Response(encode(answers.curvature(decode(CurvatureRequest, request.data))))


@extend_schema(
    operation_id="compute_measure",
    tags=COMPUTE,
    summary="Lengths and bends from marks on an image",
    description="Marks are pixels along each canal. The scale is worked out from an object of known length that was "
    "marked, else from what the image file says; the answer says what it rests on and how sure every number is. "
    "Without a scale there are angles and ratios alone. Nothing is stored, and no image is sent.",
    request=serializer_of(MeasureRequest),
    extensions=refuses(ScaleNotUsable, PointsDoNotFit, TooMuchWork, ChoiceNotPossible, OutOfBounds, LengthOutOfBounds),
    responses=serializer_of(Measured),
    examples=[examples.MEASURE_REQUEST, examples.MEASURED],
)
@api_view(["POST"])
def compute_measure(request: Request) -> Response:
    return Response(encode(answers.measured(decode(MeasureRequest, request.data))))


@extend_schema(
    operation_id="compute_two_views",
    tags=COMPUTE,
    summary="What two views of one root tell together",
    description="Which of two lines lies towards the tongue, by the way they came apart when the tube moved; and the "
    "angle of a bend in space, from its angles in both views.",
    request=serializer_of(TwoViewsRequest),
    extensions=refuses(ViewsDoNotFit, ChoiceNotPossible, OutOfBounds),
    responses=serializer_of(TwoViewsRead),
    examples=[examples.TWO_VIEWS_REQUEST, examples.TWO_VIEWS],
)
@api_view(["POST"])
def compute_two_views(request: Request) -> Response:
    return Response(encode(answers.two_views(decode(TwoViewsRequest, request.data))))


@extend_schema(
    operation_id="compute_run_sheet",
    tags=COMPUTE,
    summary="The order of work of one canal",
    description="A finite graph of steps. Depths in it are whole micrometres; everywhere else lengths are in mm.",
    request=serializer_of(RunSheetRequest),
    extensions=refuses(UnknownTooth, NotationMissing, *OF_A_PLAN),
    responses=serializer_of(RunSheetAnswer),
    examples=[examples.RUN_SHEET_REQUEST, examples.RUN_SHEET],
)
@api_view(["POST"])
def compute_run_sheet(request: Request) -> Response:
    return Response(encode(answers.run_sheet(decode(RunSheetRequest, request.data))))


@extend_schema(
    operation_id="compute_plan",
    tags=COMPUTE,
    summary="The plan of a whole tooth",
    description="Everything the plan rests on goes in; the same input gives the same plan. Nothing is stored.",
    request=serializer_of(PlanRequest),
    extensions=refuses(UnknownTooth, NotationMissing, *OF_A_PLAN),
    responses=serializer_of(Plan),
    examples=[examples.PLAN_REQUEST, examples.PLAN],
)
@api_view(["POST"])
def compute_plan(request: Request) -> Response:
    return Response(encode(answers.tooth_plan(decode(PlanRequest, request.data))))
