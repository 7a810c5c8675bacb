"""What the library asks of what is stored, where this is stricter than it: codes are kept as hashes too, a code that
comes twice ends what came of it, and nothing is issued for a person who does not let the client act for them."""

from __future__ import annotations

from datetime import datetime
from typing import Any
from uuid import UUID

from oauth2_provider.models import Grant, RefreshToken
from oauth2_provider.oauth2_validators import OAuth2Validator
from oauthlib.oauth2.rfc6749 import errors

from cases.domain.access import key_text
from cases.domain.access.client_kinds import ClientType
from cases.domain.errors import KeyRefused
from cases.services.people import client_tokens, consents

ISSUED_BY_CODE = "authorization_code"


def _family(code_hash: str) -> UUID:
    """Of all refresh tokens that come of a code: so a code that comes again leads to them."""
    return UUID(code_hash[:32])


class Validator(OAuth2Validator):
    # --- who asks ---

    def _check_secret(self, provided_secret: str, stored_secret: str) -> bool:
        """A client without a secret is never let in by one."""
        return key_text.matches(provided_secret, stored_secret or None)

    # --- codes ---

    def _create_authorization_code(self, request: Any, code: dict[str, str], expires: datetime | None = None) -> Any:
        return super()._create_authorization_code(request, {**code, "code": key_text.hash_of(code["code"])}, expires)

    def validate_code(self, client_id: str, code: str, client: Any, request: Any, *args: Any, **kwargs: Any) -> bool:
        # From here on the library asks by the hash alone.
        request.code = key_text.hash_of(code)
        if not Grant.objects.filter(code=request.code).exists():
            RefreshToken.revoke_family(_family(request.code))  # RFC 6749, 4.1.2
            return False
        if not super().validate_code(client_id, request.code, client, request, *args, **kwargs):
            return False
        grant = Grant.objects.get(code=request.code)
        return self._still_acts(client, grant.user, grant.created, grant.scope.split())

    def invalidate_authorization_code(self, client_id: str, code: str, request: Any, *args: Any, **kwargs: Any) -> None:
        try:
            super().invalidate_authorization_code(client_id, code, request, *args, **kwargs)
        except errors.InvalidGrantError:
            # Somebody else was given tokens by it at the same moment: neither keeps them.
            RefreshToken.revoke_family(_family(code))
            raise

    # --- tokens ---

    def validate_refresh_token(self, refresh_token: str, client: Any, request: Any, *args: Any, **kwargs: Any) -> bool:
        if not super().validate_refresh_token(refresh_token, client, request, *args, **kwargs):
            return False
        row = request.refresh_token_instance
        return self._still_acts(client, row.user, row.created, [])

    def _still_acts(self, client: Any, person: Any, issued_at: datetime, scopes: list[str]) -> bool:
        try:
            consents.scopes_now(client=client, person=person, issued_at=issued_at, scopes=scopes)
        except KeyRefused:
            return False
        return True

    def _create_refresh_token(self, request: Any, code: str, access_token: Any, previous: Any) -> Any:
        row = super()._create_refresh_token(request, code, access_token, previous)
        if request.grant_type == ISSUED_BY_CODE:
            RefreshToken.objects.filter(pk=row.pk).update(token_family=_family(request.code))
        return row

    def _check_and_set_request_resource(self, request: Any) -> None:
        # There is one resource here, and tokens are for nothing else: RFC 8707 has nothing to choose.
        request.resource = []

    # --- what a token is, told to clients of its programme that keep a secret ---

    def introspect_token(
        self, token: str, token_type_hint: str | None, request: Any, *args: Any, **kwargs: Any
    ) -> dict[str, Any] | None:
        """RFC 7662, 2.2; None for what does not count, and for what is another programme's or not theirs to ask."""
        try:
            admitted = client_tokens.admit(text=token)
        except KeyRefused:
            return None
        asks = request.client
        of_one_programme = asks.service.programme_id == admitted.client.service.programme_id
        if asks.client_type != ClientType.CONFIDENTIAL or not of_one_programme:
            return None
        return {
            "scope": " ".join(admitted.scopes),
            "token_type": "Bearer",
            "client_id": admitted.client.client_id,
            "sub": str(admitted.person.pk if admitted.person else admitted.client.service_id),
            "exp": int(admitted.ends_at.timestamp()),
        }
