"""Pages of OAuth 2 that a person reads: whether a client may act for them, and which clients do.

They are plain pages without a script, for whoever comes from elsewhere has not loaded the app. Sign-in is the app's
own: at these addresses it comes back by loading them once more.
"""

from __future__ import annotations

from http import HTTPStatus
from typing import Any, cast
from urllib.parse import urlsplit

from django.db import transaction
from django.http import Http404, HttpRequest, HttpResponse, HttpResponseRedirect
from django.shortcuts import render
from django.utils.decorators import method_decorator
from django.views.decorators.cache import never_cache
from django.views.generic import View
from oauth2_provider.exceptions import FatalClientError, OAuthToolkitError
from oauth2_provider.oauth2_backends import _add_iss_to_redirect
from oauth2_provider.settings import oauth2_settings
from oauth2_provider.views.mixins import OAuthLibMixin
from oauthlib.oauth2 import InvalidScopeError

from cases.domain.access.redirects import LOOPBACK
from cases.domain.access.scopes import SAYS, Scope
from cases.domain.errors import NotHere
from cases.models import Client, Person
from cases.queries import clients
from cases.services.people import consents
from frontend.views import shell

# What the library is told of what was asked.
CREDENTIALS = ("client_id", "redirect_uri", "response_type", "state", "code_challenge", "code_challenge_method")


@method_decorator(never_cache, name="dispatch")
class SignedInView(View):
    """For people who are signed in; the others are shown the app, whose sign-in stands at every address."""

    def dispatch(self, request: HttpRequest, *args: Any, **kwargs: Any) -> Any:
        if request.user.is_authenticated:
            return super().dispatch(request, *args, **kwargs)
        if request.method == "POST":
            return HttpResponseRedirect(request.get_full_path())
        return HttpResponse(shell(request).content)


class ConsentView(OAuthLibMixin, SignedInView):
    """RFC 6749, 4.1.1. Asks every time: a public client could be anybody who knows its id (RFC 8252, 8.6)."""

    http_method_names = ["get", "post"]

    def get(self, request: HttpRequest) -> HttpResponse:
        try:
            client, credentials, scopes = self._asked(request)
        except OAuthToolkitError as error:
            return self._refused(request, error, redirects=True)
        return render(
            request,
            "oauth/consent.html",
            {"client": client, "says": [SAYS[scope] for scope in scopes], "to": _where(credentials["redirect_uri"])},
        )

    def post(self, request: HttpRequest) -> HttpResponse:
        try:
            client, credentials, scopes = self._asked(request)
            allowed = request.POST.get("answer") == "allow"
            with transaction.atomic():
                if allowed:
                    consents.give(person=_person(request), client=client, scopes=scopes)
                address, *_ = self.create_authorization_response(request, " ".join(scopes), credentials, allowed)
        except OAuthToolkitError as error:
            return self._refused(request, error, redirects=False)
        return _go_back(request, address)

    def _asked(self, request: HttpRequest) -> tuple[Client, dict[str, Any], tuple[Scope, ...]]:
        """Who asks, how, and for what of it the person's role leaves open.

        Raises OAuthToolkitError, and Http404 for a client of a programme that the person does not belong to.
        """
        asked, told_by_library = self.validate_authorization_request(request)
        credentials = {name: told_by_library[name] for name in CREDENTIALS if name in told_by_library}
        client = Client.objects.select_related("service__programme").get(client_id=credentials["client_id"])
        try:
            scopes = consents.may_be_given(person=_person(request), client=client, asked=asked)
        except NotHere:
            raise Http404 from None
        if not scopes:
            error = InvalidScopeError(state=credentials["state"])
            raise OAuthToolkitError(error=error, redirect_uri=credentials["redirect_uri"])
        return client, credentials, scopes

    def _refused(self, request: HttpRequest, error: OAuthToolkitError, *, redirects: bool) -> HttpResponse:
        """The client is told, by way of the person's browser; the person alone where nobody knows who asked."""
        if isinstance(error, FatalClientError):
            says = {"says": error.oauthlib_error.description}
            return render(request, "oauth/refused.html", says, status=HTTPStatus.BAD_REQUEST)
        _, refusal = self.error_response(error)
        # RFC 9207, 2: also where it is refused.
        address = _add_iss_to_redirect(refusal["url"], oauth2_settings.oauth2_authorization_server_issuer(request))
        return HttpResponseRedirect(address) if redirects else _go_back(request, address)


def _where(address: str) -> str:
    """Where an address leads, for people; empty for their own machine."""
    host = urlsplit(address).hostname or ""
    return "" if host in LOOPBACK else host


def _go_back(request: HttpRequest, address: str) -> HttpResponse:
    """By a page that goes on by itself: a redirect after a form would be held to the policy of the page that had the
    form, and so would each one that the client makes of it."""
    return render(request, "oauth/back.html", {"address": address, "to": _where(address)})


class ConsentsView(SignedInView):
    """Clients that act for the person, each with a button that ends it."""

    http_method_names = ["get", "post"]

    def get(self, request: HttpRequest) -> HttpResponse:
        rows = [(row, [SAYS[Scope(scope)] for scope in row.scopes]) for row in clients.consents(_person(request))]
        return render(request, "oauth/consents.html", {"rows": rows})

    def post(self, request: HttpRequest) -> HttpResponse:
        row = next((row for row in clients.consents(_person(request)) if str(row.pk) == request.POST.get("end")), None)
        if row is not None:
            consents.end(actor=_person(request), id=row.pk)
        return HttpResponseRedirect(request.path)


def _person(request: HttpRequest) -> Person:
    return cast(Person, request.user)
