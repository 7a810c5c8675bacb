"""What the tables share."""

from __future__ import annotations

from collections.abc import Iterable
from enum import StrEnum
from typing import Any, ClassVar, NoReturn

from django.core.validators import RegexValidator
from django.db import models

from cases.domain.uuid7 import uuid7

HASH_LENGTH = 64  # SHA-256, hexadecimal
KEY = RegexValidator(r"\A[a-z0-9][a-z0-9-]*\Z", "Small letters, digits and hyphens only.", code="not-a-key")


class RecordFixed(TypeError):
    """Somebody tried to change or remove what is only added to: a mistake of the program, never of a user."""


def choices(values: type[StrEnum]) -> list[tuple[str, str]]:
    return [(value.value, value.value.replace("_", " ")) for value in values]


def one_of(field: str, values: Iterable[str]) -> models.Q:
    """The condition of a constraint: the column holds one of these values."""
    return models.Q(**{f"{field}__in": sorted(str(value) for value in values)})


class Identified(models.Model):
    """A row with a UUID of version 7 (RFC 9562) as its id; a client may bring its own."""

    id = models.UUIDField(primary_key=True, default=uuid7, editable=False)

    class Meta:
        abstract = True


class Listed(models.Model):
    """A row that lists show, to a service by its own key."""

    # Not stored: by which key the asking service knows it.
    external_id: str | None = None

    class Meta:
        abstract = True


class ClientCreated(Identified):
    """A row that a client may send twice. `sent_hash` is of what was sent: sent again, it gets the same answer."""

    sent_hash = models.CharField(max_length=HASH_LENGTH, editable=False)

    class Meta:
        abstract = True


class FixedQuerySet(models.QuerySet[Any]):
    """Refuses what would change or remove rows: these methods of a query set go past `save` and `delete`."""

    def update(self, **kwargs: Any) -> NoReturn:
        raise RecordFixed(f"{self.model.__name__} is only added to.")

    def delete(self) -> NoReturn:
        raise RecordFixed(f"{self.model.__name__} is only added to.")

    def bulk_update(self, objs: Iterable[Any], fields: Iterable[str], batch_size: int | None = None) -> NoReturn:
        raise RecordFixed(f"{self.model.__name__} is only added to.")


class AppendOnly(models.Model):
    """A record: once written it is neither changed nor removed, by code or by the administration.

    `moving` names the few columns that may still change (a plan version's state); all else raises RecordFixed.
    """

    moving: ClassVar[frozenset[str]] = frozenset()

    objects = FixedQuerySet.as_manager()

    class Meta:
        abstract = True

    def save(self, **kwargs: Any) -> None:
        named = kwargs.get("update_fields")
        # Without `update_fields` Django would write every column.
        may_change = named is not None and frozenset(named) <= self.moving
        if not self._state.adding and not may_change:
            raise RecordFixed(f"{type(self).__name__} is only added to.")
        super().save(**kwargs)

    def delete(self, *args: Any, **kwargs: Any) -> NoReturn:
        raise RecordFixed(f"{type(self).__name__} is only added to.")
