"""Access tokens of clients, as they come with a request."""

from __future__ import annotations

from django.utils import timezone
from oauth2_provider.models import AccessToken

from cases.domain.access import key_text
from cases.domain.access.scopes import FOR_SERVICES
from cases.domain.errors import KeyRefused
from cases.models import ClientToken
from cases.services.people import consents


def admit(*, text: str) -> ClientToken:
    """The token with this text. Raises KeyRefused for one that does not count, or does no more."""
    rows = AccessToken.objects.select_related("application__service", "application__made_by", "user")
    row = rows.filter(token_checksum=key_text.hash_of(text)).first()
    if row is None:
        raise KeyRefused(reason="There is no such key.")
    client, person, scopes = row.application, row.user, row.scope.split()
    if client is None or client.revoked_at is not None:
        raise KeyRefused(reason="This client was revoked.")
    if row.expires <= timezone.now():
        raise KeyRefused(reason="This token has ended. Ask for another.")
    if person is None:
        now = [scope for scope in FOR_SERVICES if scope in scopes and scope in client.scopes]
    else:
        now = list(consents.scopes_now(client=client, person=person, issued_at=row.created, scopes=scopes))
    return ClientToken(client=client, person=person, scopes=[str(scope) for scope in now], ends_at=row.expires)
