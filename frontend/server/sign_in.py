"""How the API knows who asks."""

from __future__ import annotations

from drf_spectacular.authentication import SessionScheme
from rest_framework.authentication import SessionAuthentication
from rest_framework.request import Request

from cases.api.token import check_token


class SignedInSession(SessionAuthentication):
    """The session cookie. Answers 401 to somebody not signed in, so that 403 means *refused* and nothing else."""

    def authenticate_header(self, request: Request) -> str:
        return 'Session realm="fourth-canal"'

    def enforce_csrf(self, request: Request) -> None:
        check_token(request)


class SignedInSessionScheme(SessionScheme):
    target_class = "frontend.server.sign_in.SignedInSession"
    name = "session"
