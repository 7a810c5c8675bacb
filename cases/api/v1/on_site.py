"""On-site sign-offs: a supervisor's one-time codes, and signing off with one on the student's phone."""

from __future__ import annotations

from typing import Annotated, Any, ClassVar
from uuid import UUID

import segno
from django.utils.cache import add_never_cache_headers
from drf_spectacular.utils import extend_schema
from rest_framework import serializers, status
from rest_framework.request import Request
from rest_framework.response import Response

from cases.api.base import LOCATION, View, answer, given, me
from cases.api.fields import Id, Strict, Text, Value
from cases.api.v1 import examples
from cases.api.v1.treatment import HASH_DIGITS, TreatmentShown, treatment_answer
from cases.domain.errors import (
    CodeRefused,
    Conflict,
    HoldPointAnswered,
    NotAllowed,
    NotUsable,
    PasswordWrong,
    TooManyTries,
)
from cases.domain.events.payloads import SignOffExit, SignOffPayload
from cases.queries import seen
from cases.queries.one_time_codes import OneTimeCodeShown, one_time_code_shown
from cases.services.people import one_time_codes
from cases.services.treatment import on_site_sign_off
from cases.services.treatment.on_site_sign_off import CanalSignOff, OnSiteSignOff
from planning.api.refusals import refuses
from planning.api.values import serializer_of
from planning.foundation.counts import at_most

TAGS = ["on site"]
CODE_DIGITS = 6


class Code(Text):
    """Six digits as they are shown, with or without the gap in the middle."""

    default_error_messages: ClassVar[dict[str, Any]] = {"not_a_code": f"A code has {CODE_DIGITS} digits."}

    def to_internal_value(self, data: Any) -> str:
        read = super().to_internal_value(data).replace(" ", "")
        if not (len(read) == CODE_DIGITS and read.isascii() and read.isdecimal()):
            self.fail("not_a_code")
        return read


class PasswordGiven(Strict):
    password = Text(max_length=200, trim_whitespace=False)


class CodeSecretShown(serializers.Serializer[Any]):
    """A new secret, and its address drawn as a QR code, which is worked out here."""

    secret = serializers.CharField(help_text="Base 32 (RFC 4648), to be typed into a code app.")
    address = serializers.CharField(help_text="`otpauth://totp/...`: the same for a code app on this phone.")
    square = serializers.ListField(
        child=serializers.CharField(), help_text="The address as a QR code (ISO/IEC 18004): rows of 0 and 1."
    )


class CodeGiven(Strict):
    code = Code(max_length=7)


class OnSiteSignOffGiven(Strict):
    supervisor_id = Id(help_text="Who types the code.")
    code = Code(max_length=7)
    plan_hash = Text(max_length=HASH_DIGITS, help_text="Of the plan on the screen.")
    canal = Text(max_length=12, required=False, allow_blank=True, help_text="Empty for a sign-off of the visit.")
    also = Value(
        Annotated[tuple[CanalSignOff, ...], at_most("canals")],
        required=False,
        help_text="Other canals that wait, each with its hold point and its answer: one code serves all.",
    )
    node = Text(max_length=120, help_text="The hold point in the run sheet, or `visit/check`, `visit/renew`.")
    exit = Value(SignOffExit)
    despite_missing = Value(bool, required=False, help_text="Approved although what is asked for is not there.")
    reason = Text(required=False, allow_blank=True)


class OneTimeCodeView(View):
    keeps_answers = False

    @extend_schema(
        operation_id="one_time_code_retrieve",
        tags=TAGS,
        summary="Whether codes of yours count",
        responses=serializer_of(OneTimeCodeShown),
    )
    def get(self, request: Request) -> Response:
        return answer(serializer_of(OneTimeCodeShown), one_time_code_shown(me(request)))

    @extend_schema(
        operation_id="one_time_code_create",
        tags=TAGS,
        summary="Make a new secret for one-time codes",
        description="For supervisors. RFC 6238 with its usual choices: SHA-1, 30 seconds, six digits. Shown this once "
        "and kept nowhere. It counts once a first code was confirmed; until then an earlier one goes on to count. "
        "The password is asked for once more.",
        parameters=[LOCATION],
        request=PasswordGiven,
        examples=[examples.PASSWORD_AGAIN],
        extensions=refuses(NotAllowed, PasswordWrong, TooManyTries),
        responses={201: CodeSecretShown},
    )
    def post(self, request: Request) -> Response:
        made = one_time_codes.make(actor=me(request), **given(PasswordGiven, request))
        rows = ["".join(map(str, row)) for row in segno.make_qr(made.address, error="m").matrix]
        secret = {"secret": made.secret, "address": made.address, "square": rows}
        response = answer(CodeSecretShown, secret, created=True, at="one-time-code")
        add_never_cache_headers(response)
        return response

    @extend_schema(
        operation_id="one_time_code_destroy",
        tags=TAGS,
        summary="Let no code count any more",
        description="Harmless where none did.",
        responses={204: None},
    )
    def delete(self, request: Request) -> Response:
        one_time_codes.remove(actor=me(request))
        return Response(status=status.HTTP_204_NO_CONTENT)


class OneTimeCodeConfirmView(View):
    keeps_answers = False

    @extend_schema(
        operation_id="one_time_code_confirm",
        tags=TAGS,
        summary="Confirm a new secret by its first code",
        description="422 for a code that does not count, 429 after five of them.",
        request=CodeGiven,
        examples=[examples.ONE_TIME_CODE],
        extensions=refuses(Conflict, CodeRefused, TooManyTries),
        responses=serializer_of(OneTimeCodeShown),
    )
    def post(self, request: Request) -> Response:
        one_time_codes.confirm(actor=me(request), **given(CodeGiven, request))
        return answer(serializer_of(OneTimeCodeShown), one_time_code_shown(me(request)))


class OnSiteSignOffsView(View):
    @extend_schema(
        operation_id="on_site_sign_offs_create",
        tags=TAGS,
        summary="A supervisor's sign-off on the student's phone",
        description="Online only. The code is the named supervisor's, counts once, and only for the hold point at "
        "which the canal waits on this plan: 409, `hold-point-answered`, where it waits there no more. The event is "
        "the supervisor's, with `on_site`. 422 for a code that does not count; after five wrong ones, 429 for "
        "fifteen minutes.",
        request=OnSiteSignOffGiven,
        extensions=refuses(NotAllowed, HoldPointAnswered, NotUsable, CodeRefused, TooManyTries),
        responses=TreatmentShown,
        examples=[examples.ON_SITE_SIGN_OFF],
    )
    def post(self, request: Request, case_id: UUID) -> Response:
        case = seen.case(me(request), case_id)
        read = given(OnSiteSignOffGiven, request)
        payload = SignOffPayload(
            **{key: read.pop(key) for key in ("exit", "despite_missing", "reason") if key in read}, on_site=True
        )
        on_site_sign_off.sign_off(actor=me(request), case=case, entry=OnSiteSignOff(payload=payload, **read))
        return treatment_answer(case.pk)
