"""The scopes, as the library asks for them."""

from __future__ import annotations

from typing import Any

from oauth2_provider.scopes import BaseScopes

from cases.domain.access.scopes import SAYS, Scope
from cases.models import Client


class ClientScopes(BaseScopes):
    def get_all_scopes(self) -> dict[str, str]:
        return {scope.value: says for scope, says in SAYS.items()}

    def get_available_scopes(self, application: Client | None = None, *args: Any, **kwargs: Any) -> list[str]:
        """Those that the client was made with; all of them where no client is meant."""
        return list(application.scopes) if application else [scope.value for scope in Scope]

    def get_default_scopes(self, application: Client | None = None, *args: Any, **kwargs: Any) -> list[str]:
        """Of a client that names none (RFC 6749, 3.3): all that it was made with."""
        return self.get_available_scopes(application)
