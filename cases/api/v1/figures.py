"""Figures of a programme's own."""

from __future__ import annotations

from typing import Annotated
from uuid import UUID

from drf_spectacular.utils import extend_schema
from rest_framework import status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import View, asker, given, me
from cases.api.fields import Strict, Value
from cases.api.v1 import examples
from cases.domain.errors import NotAllowed, NotUsable
from cases.queries import figures, seen
from cases.queries.figures import FigureShown, FiguresShown, WidthsListed, WidthsShown
from cases.services.people import thresholds
from planning.api.refusals import refuses
from planning.api.values import serializer_of
from planning.contract.canal_facts import WidthInput
from planning.contract.plan_input import OwnFigure
from planning.foundation.counts import at_most
from planning.foundation.encoding import encode
from planning.foundation.errors import CanalsDoNotFit, ChoiceNotPossible, OutOfBounds

TAGS = ["programme"]


class FigureGiven(Strict):
    value = Value(OwnFigure, help_text="In the figure's own unit, within its least and most.")


class WidthsGiven(Strict):
    widths = Value(Annotated[tuple[WidthInput, ...], at_most("widths")], help_text="From the end upwards.")


class FiguresView(View):
    short_list = True

    @extend_schema(
        operation_id="programme_figures_list",
        tags=TAGS,
        summary="The figures that plans rest on",
        description="Each with its source, how it is known, and how far a programme's own value may lie from it.",
        responses=serializer_of(FiguresShown),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(asker(request), programme_id)
        return Response(encode(figures.figures(programme_id)))


class FigureView(View):
    @extend_schema(
        operation_id="programme_figure_update",
        tags=TAGS,
        summary="Set a figure of the programme's own",
        description="By the coordinator, logged. Plans made from now on rest on it and say so; those that exist keep "
        "theirs.",
        request=FigureGiven,
        extensions=refuses(NotAllowed, ChoiceNotPossible, OutOfBounds),
        responses=serializer_of(FigureShown),
        examples=[examples.FIGURE],
    )
    def put(self, request: Request, programme_id: UUID, key: str) -> Response:
        seen.programme(me(request), programme_id)
        read = given(FigureGiven, request)
        thresholds.set_threshold(actor=me(request), programme_id=programme_id, key=key, value=read["value"])
        return Response(encode(figures.figure(programme_id, key)))

    @extend_schema(
        operation_id="programme_figure_destroy",
        tags=TAGS,
        summary="Go back to the published figure",
        extensions=refuses(NotAllowed),
        responses={204: None},
    )
    def delete(self, request: Request, programme_id: UUID, key: str) -> Response:
        seen.programme(me(request), programme_id)
        thresholds.set_threshold(actor=me(request), programme_id=programme_id, key=key, value=None)
        return Response(status=status.HTTP_204_NO_CONTENT)


class WidthsView(View):
    short_list = True

    @extend_schema(
        operation_id="programme_widths_list",
        tags=TAGS,
        summary="Canal widths of the programme's own",
        responses=serializer_of(WidthsListed),
    )
    def get(self, request: Request, programme_id: UUID) -> Response:
        seen.programme(asker(request), programme_id)
        return Response(encode(figures.widths(programme_id)))


class CanalWidthsView(View):
    @extend_schema(
        operation_id="programme_widths_update",
        tags=TAGS,
        summary="Set how wide a canal is taken to be",
        description="By the coordinator, logged. In place of the published widths of that canal, on both sides of the "
        "mouth; a canal that was measured keeps its own.",
        request=WidthsGiven,
        extensions=refuses(NotAllowed, NotUsable, CanalsDoNotFit, OutOfBounds),
        responses=serializer_of(WidthsShown),
        examples=[examples.WIDTHS],
    )
    def put(self, request: Request, programme_id: UUID, tooth: str, canal: str) -> Response:
        seen.programme(me(request), programme_id)
        read = given(WidthsGiven, request)
        thresholds.set_widths(actor=me(request), programme_id=programme_id, tooth=tooth, canal=canal, **read)
        return Response(encode(figures.widths_of(programme_id, tooth, canal)))

    @extend_schema(
        operation_id="programme_widths_destroy",
        tags=TAGS,
        summary="Go back to the published widths",
        extensions=refuses(NotAllowed),
        responses={204: None},
    )
    def delete(self, request: Request, programme_id: UUID, tooth: str, canal: str) -> Response:
        seen.programme(me(request), programme_id)
        thresholds.set_widths(actor=me(request), programme_id=programme_id, tooth=tooth, canal=canal, widths=None)
        return Response(status=status.HTTP_204_NO_CONTENT)
