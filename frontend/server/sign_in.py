"""How the API knows who asks."""

from __future__ import annotations

from rest_framework.authentication import SessionAuthentication
from rest_framework.request import Request

from cases.api.token import check_token


class SignedInSession(SessionAuthentication):
    """The session cookie. That nobody is signed in is answered with 401, by the first way to sign in: 403 means
    *refused* and nothing else."""

    def enforce_csrf(self, request: Request) -> None:
        check_token(request)
