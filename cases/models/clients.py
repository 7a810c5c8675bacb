"""Clients of OAuth 2: other programs that ask with short-lived tokens, for themselves or for people who allow it.

Tokens and codes lie in the library's own tables, all of them as hashes.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Any, ClassVar

from django.db import models
from oauth2_provider.models import AbstractApplication

from cases.domain.access.client_kinds import ActsFor
from cases.domain.uuid7 import uuid7
from cases.models.access_keys import AccessKey, Service
from cases.models.base import Identified
from cases.models.people import Person


class Client(AbstractApplication):
    """A client of a programme's service. Its secret is shown once and stored nowhere."""

    id = models.UUIDField(primary_key=True, default=uuid7, editable=False)
    service = models.ForeignKey(Service, on_delete=models.PROTECT, related_name="+")
    scopes = models.JSONField(help_text="JSON list of the scopes that it may ask for.")
    made_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="+")
    revoked_at = models.DateTimeField(null=True)

    # The library's own note of who registered it.
    user = None

    objects: ClassVar[models.Manager[Client]] = models.Manager()

    @property
    def acts_for(self) -> ActsFor:
        by_code = self.authorization_grant_type == self.GRANT_AUTHORIZATION_CODE
        return ActsFor.PEOPLE if by_code else ActsFor.ITSELF

    @property
    def addresses(self) -> list[str]:
        """Where it may have people sent back to."""
        return str(self.redirect_uris).split()

    def is_usable(self, request: Any) -> bool:
        return self.revoked_at is None


class Consent(Identified):
    """That a client may act for a person. Nothing is left of it once it has ended; the log keeps that it was."""

    client = models.ForeignKey(Client, on_delete=models.PROTECT, related_name="consents")
    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="consents")
    scopes = models.JSONField(help_text="JSON list of all scopes that the person allowed.")
    given_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        constraints = [models.UniqueConstraint(fields=["client", "person"], name="one_consent_for_a_client")]

    def __str__(self) -> str:
        return f"{self.client}, {self.person}"


@dataclass(frozen=True, slots=True, kw_only=True)
class ClientToken:
    """An access token that counts at this moment. No row: what is stored is the library's."""

    client: Client
    person: Person | None
    """For whom it acts; None: for itself."""
    scopes: list[str]
    ends_at: datetime

    @property
    def name(self) -> str:
        return str(self.client.name)

    @property
    def made_by(self) -> Person:
        maker: Person = self.client.made_by
        return maker

    @property
    def service(self) -> Service | None:
        """The service that asks; None where a person does, through the client."""
        return None if self.person else self.client.service


Key = AccessKey | ClientToken
"""By what a program signs in."""
