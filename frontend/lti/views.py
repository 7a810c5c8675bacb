"""What a platform and its people are answered. Nothing here is shown in a frame: the policy forbids it."""

from __future__ import annotations

from http import HTTPStatus
from typing import Any
from urllib.parse import urlsplit
from uuid import UUID

from django.contrib import auth
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect, JsonResponse
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.cache import cache_control, never_cache
from django.views.decorators.csrf import csrf_exempt
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from cases.domain.access.roles import Role
from cases.domain.errors import NotUsable
from cases.domain.lti import Assignment
from cases.services.lti import deep_links, launches, messages
from cases.services.lti.messages import LaunchRefused
from cases.services.lti.own_key import key_set
from planning.anatomy import all_teeth
from planning.techniques.technique import Setting

SIGNED_IN_BY = "django.contrib.auth.backends.ModelBackend"  # whose session is like any other
SETTINGS = {
    Setting.BLOCK: "a training block",
    Setting.EXTRACTED: "an extracted tooth",
    Setting.CLINIC: "the clinic",
}


@never_cache
@csrf_exempt
@require_http_methods(["GET", "POST"])
def login(request: HttpRequest) -> HttpResponse:
    """Sends the browser to its platform, which sends it back to `launch`. It keeps the state in a cookie."""
    params = (request.POST if request.method == "POST" else request.GET).dict()
    try:
        to = messages.login(_texts(params), launch_address=_launch_address(request))
    except LaunchRefused as refusal:
        return _refused(request, refusal)
    answer = HttpResponseRedirect(to.address)
    answer.set_cookie(
        messages.cookie_of(to.state),
        to.state,
        max_age=messages.STATE_S,
        path=reverse("lti-launch"),
        # The platform's own page sends the launch: a browser brings no stricter cookie along with that.
        samesite="None",
        secure=True,
        httponly=True,
    )
    return answer


@never_cache
@csrf_exempt
@require_POST
def launch(request: HttpRequest) -> HttpResponse:
    """Signs whoever launched in and leads to the assignment, or has a teacher choose one."""

    def record_address(case_id: UUID) -> str:
        return request.build_absolute_uri(f"/cases/{case_id}/record")

    try:
        message = messages.read(_texts(request.POST.dict()), cookies=request.COOKIES)
        if message.deep_link is not None:
            answer = _choose(request, deep_links.begin(message=message))
        else:
            answer = _enter(request, launches.arrive(message=message, record_address=record_address))
    except LaunchRefused as refusal:
        answer = _refused(request, refusal)
    answer.delete_cookie(messages.cookie_of(request.POST.get("state", "")), path=reverse("lti-launch"), samesite="None")
    return answer


def _enter(request: HttpRequest, arrival: launches.Arrival) -> HttpResponse:
    auth.login(request, arrival.person, backend=SIGNED_IN_BY)
    usual = "/worklist" if arrival.role == Role.SUPERVISOR else "/cases"
    answer = HttpResponseRedirect(f"/cases/{arrival.case_id}" if arrival.case_id else usual)
    answer.status_code = HTTPStatus.SEE_OTHER
    return answer


@never_cache
@require_POST
def choice(request: HttpRequest) -> HttpResponse:
    """Takes what a teacher chose, and gives them the form that carries it to their platform."""
    ticket = request.POST.get("ticket", "")
    try:
        assignment = Assignment.of(_texts(request.POST.dict()))
        if assignment is None:
            raise NotUsable(reason="Choose a tooth.")
        carried = deep_links.answer(ticket, assignment, launch_address=_launch_address(request))
    except NotUsable as refusal:
        return _choose(request, ticket, says=str(refusal), chosen=request.POST.dict(), status=HTTPStatus.BAD_REQUEST)
    except LaunchRefused as refusal:
        return _refused(request, refusal)
    answer = render(request, "lti/carry.html", {"to": carried.address, "jwt": carried.jwt, "tooth": assignment.iso})
    to = urlsplit(carried.address)
    # The form goes to the platform and nowhere else.
    answer._csp_update = {"form-action": [f"{to.scheme}://{to.netloc}"]}  # type: ignore[attr-defined]
    return answer


@require_safe
@cache_control(max_age=300)
def keys(request: HttpRequest) -> HttpResponse:
    """The public key by which platforms know what comes from here."""
    return JsonResponse(key_set())


def _choose(
    request: HttpRequest,
    ticket: str,
    *,
    says: str = "",
    chosen: dict[str, Any] | None = None,
    status: HTTPStatus = HTTPStatus.OK,
) -> HttpResponse:
    shown = {
        "ticket": ticket,
        "teeth": [tooth for tooth in all_teeth() if not tooth.primary],
        "settings": [(setting.value, words) for setting, words in SETTINGS.items()],
        "says": says,
        "chosen": chosen or {"setting": Setting.EXTRACTED.value},
    }
    return render(request, "lti/choose.html", shown, status=status)


def _refused(request: HttpRequest, refusal: LaunchRefused) -> HttpResponse:
    return render(request, "lti/refused.html", {"reason": refusal.reason}, status=HTTPStatus.BAD_REQUEST)


def _launch_address(request: HttpRequest) -> str:
    return request.build_absolute_uri(reverse("lti-launch"))


def _texts(params: dict[str, Any]) -> dict[str, str]:
    return {name: value for name, value in params.items() if isinstance(value, str)}
