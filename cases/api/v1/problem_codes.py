"""What each code of a problem means and what to do: the addresses that the `type` of a problem names."""

from __future__ import annotations

from drf_spectacular.utils import extend_schema
from rest_framework.permissions import AllowAny
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, answer
from cases.api.problem_codes import ProblemCode, ProblemCodes, problem_codes
from cases.domain.errors import NotHere
from planning.api.values import serializer_of

TAGS = ["reference"]


class ProblemsView(View):
    short_list = True
    permission_classes = (AllowAny,)

    @extend_schema(
        operation_id="problems_list",
        tags=TAGS,
        summary="What can be refused, by code",
        description="Open to all.",
        responses=serializer_of(ProblemCodes),
    )
    def get(self, request: Request) -> Response:
        return answer(serializer_of(ProblemCodes), ProblemCodes(results=tuple(problem_codes().values())))


class ProblemView(View):
    permission_classes = (AllowAny,)

    @extend_schema(
        operation_id="problem_retrieve",
        tags=TAGS,
        summary="What a code means, and what to do",
        description="The address that the `type` of a problem names. Open to all.",
        responses=serializer_of(ProblemCode),
    )
    def get(self, request: Request, code: str) -> Response:
        explained = problem_codes().get(code)
        if explained is None:
            raise NotHere(what="problem")
        return answer(serializer_of(ProblemCode), explained)
