"""A phone that lost the answer sends again: the same id with the same content is answered as before."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar
from uuid import UUID

from cases.domain.errors import SentDifferently
from cases.models import Person
from cases.models.base import ClientCreated
from planning.foundation.encoding import canonical_text, digest

Row = TypeVar("Row", bound=ClientCreated)


def fingerprint(*, actor: Person, to: Any, what: Mapping[str, Any]) -> str:
    """SHA-256 of who sent what to where."""
    return digest(canonical_text({"actor": str(actor.pk), "to": str(to), "what": dict(what)}))


def sent_before(model: type[Row], id_: UUID | None, sent_hash: str) -> Row | None:
    """The row of this id where the same was sent before, None for a new one. Raises SentDifferently."""
    return same(model._default_manager.filter(pk=id_).first() if id_ else None, sent_hash)


def same(row: Row | None, sent_hash: str) -> Row | None:
    """The row that has the id. Raises SentDifferently where something else was sent with it."""
    if row is not None and row.sent_hash != sent_hash:
        raise SentDifferently(id=row.pk, at=("id",))
    return row
