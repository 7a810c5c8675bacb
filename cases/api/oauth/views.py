"""The addresses that programs ask. Refusals are those of RFC 6749, 5.2, and no problem details: that is what libraries
for clients read."""

from __future__ import annotations

import base64
import binascii
import json
from http import HTTPStatus
from typing import Any

from django.http import HttpRequest, HttpResponse, JsonResponse
from django.utils.decorators import method_decorator
from django.views.decorators.csrf import csrf_exempt
from django.views.generic import View
from oauth2_provider.views import OAuthServerMetadataView, RevokeTokenView, TokenView
from oauth2_provider.views.mixins import OAuthLibMixin

from cases.api.bearer import REALM
from cases.domain.errors import TooManyTries
from cases.services.people import tries

SECONDS_PER_MINUTE = 60


@method_decorator(csrf_exempt, name="dispatch")  # for programs: no cookie counts here
class CountsWrongSecrets(View):
    """Wrong secrets are counted as wrong passwords are, by client and address."""

    def dispatch(self, request: HttpRequest, *args: Any, **kwargs: Any) -> Any:
        counted = tries.of_name_and_address(f"client {_client_id(request)}", request.META.get("REMOTE_ADDR", ""))
        try:
            tries.refuse_after_many(counted)
        except TooManyTries as refusal:
            after_s = refusal.fields["minutes"] * SECONDS_PER_MINUTE
            return _refused("temporarily_unavailable", str(refusal), HTTPStatus.TOO_MANY_REQUESTS, after_s)
        response = super().dispatch(request, *args, **kwargs)
        if response.status_code == HTTPStatus.UNAUTHORIZED:
            tries.count_wrong(counted)
            response["WWW-Authenticate"] = f"Basic {REALM}"  # RFC 6749, 5.2
        return response


def _refused(error: str, says: str, status: HTTPStatus, after_s: int) -> HttpResponse:
    body = {"error": error, "error_description": says}
    return JsonResponse(body, status=status, headers={"Retry-After": str(after_s), "Cache-Control": "no-store"})


def _client_id(request: HttpRequest) -> str:
    """Whom the client says it is, in one of the two ways (RFC 6749, 2.3.1); empty where that cannot be read."""
    scheme, _, text = request.headers.get("Authorization", "").partition(" ")
    if scheme.lower() != "basic":
        return str(request.POST.get("client_id", ""))
    try:
        return base64.b64decode(text).decode().partition(":")[0]
    except (binascii.Error, UnicodeDecodeError):
        return ""


class TokensView(CountsWrongSecrets, TokenView):
    """RFC 6749, 3.2."""


class RevocationView(CountsWrongSecrets, RevokeTokenView):
    """RFC 7009."""


class IntrospectionView(CountsWrongSecrets, OAuthLibMixin, View):
    """RFC 7662."""

    http_method_names = ["post"]

    def post(self, request: HttpRequest) -> HttpResponse:
        core = self.get_oauthlib_core()
        headers, body, status = core.server.create_introspect_response(*core._extract_params(request))
        return HttpResponse(body, status=status, headers=headers)


class MetadataView(OAuthServerMetadataView):
    """RFC 8414. Asking what a token is needs a secret, unlike the rest."""

    def get(self, request: HttpRequest, *args: Any, **kwargs: Any) -> HttpResponse:
        data = json.loads(super().get(request, *args, **kwargs).content)
        methods = [each for each in data["token_endpoint_auth_methods_supported"] if each != "none"]
        data["introspection_endpoint_auth_methods_supported"] = methods
        data["service_documentation"] = request.build_absolute_uri("/api/v1/docs")
        return JsonResponse(data, headers={"Access-Control-Allow-Origin": "*"})
