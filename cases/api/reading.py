"""How the API is read, at every address alike (RFC 9110): what is asked for by a name that is not known is refused, and
what is answered has a tag and is for the one who asked."""

from __future__ import annotations

from collections.abc import Callable
from http import HTTPStatus
from typing import Any

from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.utils.cache import get_conditional_response, set_response_etag
from rest_framework.exceptions import ErrorDetail

from cases.api import problems, short_lists
from cases.api.chosen_fields import choosing
from planning.foundation.encoding import sentence_of

API = "/api/"
READS = ("GET", "HEAD")
NOTHING_NEW = "Nothing-New"
"""A header of an answer that whoever was asked to wait for something new asks for again; it is not sent on."""


class ReadingMiddleware:
    def __init__(self, get_response: Callable[[HttpRequest], HttpResponseBase]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponseBase:
        answer = self.get_response(request)
        if not request.path_info.startswith(API):
            return answer
        # Kept by the one who asked alone, and shown again only once it was asked whether it still holds.
        answer.headers.setdefault("Cache-Control", "private, no-cache")
        if request.method in READS and answer.status_code == HTTPStatus.OK and isinstance(answer, HttpResponse):
            return _on_condition(request, answer)
        return answer

    def process_view(
        self, request: HttpRequest, view: Callable[..., Any], args: Any, kwargs: Any
    ) -> HttpResponse | None:
        """The refusal of a query with a name that the address does not know, or one twice; else None."""
        if not request.path_info.startswith(API):
            return None
        method = "GET" if request.method == "HEAD" else str(request.method)
        of_view = getattr(view, "cls", None)
        names = query_names(of_view, method)
        repeated = (*getattr(of_view, "repeated", ()), *choosing(of_view, method))
        wrong = {
            name: problem
            for name, values in request.GET.lists()
            if (problem := _problem(name in names, len(values) > 1 and name not in repeated))
        }
        if short_lists.names_of(of_view, method):
            wrong = short_lists.problems_of(request.GET) | wrong
        refuse = getattr(of_view, "query_refused", problems.query_refused)
        return refuse(wrong) if wrong else None

    def process_template_response(self, request: HttpRequest, response: Any) -> Any:
        """The page of a short list that was asked for, before it is written out."""
        view = getattr(request.resolver_match and request.resolver_match.func, "cls", None)
        names = short_lists.names_of(view, "GET" if request.method in READS else str(request.method))
        if response.status_code == HTTPStatus.OK and not request.GET.keys().isdisjoint(names):
            short_lists.in_pages(request, response)
        return response


def query_names(view: Any, method: str) -> tuple[str, ...]:
    """What the query of a view's method may hold."""
    names = getattr(view, "query", {}).get(method, ())
    return (*names, *choosing(view, method), *short_lists.names_of(view, method))


def _problem(known: bool, twice: bool) -> ErrorDetail | None:
    if not known:
        return ErrorDetail(sentence_of("unknown-key"), code="unknown-key")
    return ErrorDetail(sentence_of("twice"), code="twice") if twice else None


def _on_condition(request: HttpRequest, answer: HttpResponse) -> HttpResponse:
    if "ETag" not in answer.headers:
        set_response_etag(answer)
    conditional = get_conditional_response(request, etag=answer.headers.get("ETag"), response=answer) or answer
    if conditional.status_code == HTTPStatus.PRECONDITION_FAILED:
        return problems.changed_since()
    return conditional
