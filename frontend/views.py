"""The app's shell, and what is said when an address or a request fails."""

from __future__ import annotations

from django.conf import settings
from django.http import HttpRequest, HttpResponse
from django.views.decorators.cache import cache_control
from django.views.decorators.http import condition, require_safe

from cases.api import problems
from cases.api.fhir import outcomes


def _changed(request: HttpRequest) -> str | None:
    index = settings.FRONTEND_DIST / "index.html"
    return f'"{index.stat().st_mtime_ns:x}"' if index.is_file() else None


@require_safe
@cache_control(no_cache=True)
@condition(etag_func=_changed)
def shell(request: HttpRequest) -> HttpResponse:
    """The built page at every address of the app's own: the page's router takes it from there."""
    index = settings.FRONTEND_DIST / "index.html"
    if not index.is_file():
        return _page(503, "The front end is not built", "Start with: python3 manage.py demo")
    return HttpResponse(index.read_bytes())


def bad_request(request: HttpRequest, exception: Exception) -> HttpResponse:
    if _is_api(request):
        return _answer(request, problems.bad_request(request, exception))
    return _page(400, "That request could not be read", "Go back and try again.")


def permission_denied(request: HttpRequest, exception: Exception) -> HttpResponse:
    if _is_api(request):
        return _answer(request, problems.permission_denied(request, exception))
    return _page(403, "That is not yours to do", "Ask the coordinator of your programme.")


def not_found(request: HttpRequest, exception: Exception) -> HttpResponse:
    if _is_api(request):
        return _answer(request, problems.not_found(request, exception))
    return _page(404, "There is nothing at this address", "Start again from the first page.")


def server_error(request: HttpRequest) -> HttpResponse:
    if _is_api(request):
        return _answer(request, problems.server_error(request))
    return _page(500, "Something broke on our side", "What was sent may not have been kept. Try again in a moment.")


def _answer(request: HttpRequest, problem: HttpResponse) -> HttpResponse:
    return outcomes.answer_of(problem) if request.path_info.startswith(outcomes.PREFIX) else problem


def _is_api(request: HttpRequest) -> bool:
    return request.path_info.startswith("/api/")


def _page(status: int, title: str, way_out: str) -> HttpResponse:
    # Plain on purpose: it must work when nothing else does. No value of the request enters it.
    return HttpResponse(
        "<!doctype html><html lang=en><meta charset=utf-8>"
        '<meta name=viewport content="width=device-width,initial-scale=1">'
        f'<title>{title}</title><h1>{title}</h1><p>{way_out}</p><p><a href="/">Fourth Canal</a></p></html>',
        status=status,
    )
