"""The library's server, less what is not offered: no token without a code (RFC 9700, 2.1.2), no password (2.4), no
challenge that is the verifier itself (RFC 7636, 7.2)."""

from __future__ import annotations

import secrets
from typing import Any

from oauthlib.oauth2 import Server

from cases.domain.access.key_text import SECRET_BYTES, START

GRANTS = ("authorization_code", "client_credentials", "refresh_token")
RESPONSES = ("code",)
CHALLENGES = ("S256",)


class OfferedServer(Server):
    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self._grant_types = {name: self.grant_types[name] for name in GRANTS}
        self._response_types = {name: self.response_types[name] for name in RESPONSES}
        methods = self.auth_grant._code_challenge_methods
        self.auth_grant._code_challenge_methods = {name: methods[name] for name in CHALLENGES}


def access_token(request: Any, refresh_token: bool = False) -> str:
    """A new one, as the library asks for it. The start is for programs that look for secrets."""
    return f"{START}_token_{secrets.token_hex(SECRET_BYTES)}"


def refresh_token(request: Any) -> str:
    return f"{START}_refresh_{secrets.token_hex(SECRET_BYTES)}"
