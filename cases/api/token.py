"""The token by which a page proves that a change is its own."""

from __future__ import annotations

from rest_framework.authentication import SessionAuthentication
from rest_framework.exceptions import PermissionDenied
from rest_framework.request import Request


class TokenMissing(PermissionDenied):
    """A change came without the token of the page's cookie, or with another one."""

    default_code = "token-missing"
    default_detail = "The page's token was missing or not the present one. Ask for the session, then send this again."


def check_token(request: Request) -> None:
    """Raises TokenMissing: a code of its own, so that a page fetches a new token and goes on."""
    try:
        SessionAuthentication().enforce_csrf(request)
    except PermissionDenied as error:
        raise TokenMissing from error
