"""Pages of a list with an order of its own: each goes on after the place of the last row of the one before."""

from __future__ import annotations

import json
from base64 import urlsafe_b64decode, urlsafe_b64encode
from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Any, TypeVar
from uuid import UUID

from django.db.models import Model, Q, QuerySet

Row = TypeVar("Row", bound=Model)
Order = Mapping[str, type[Any]]
"""The columns of an order, the last an id, and what each holds; one that falls has `-` before its name."""
Place = tuple[Any, ...]
"""The values of an order's columns in one row."""


def place_of(row: Model, order: Order) -> Place:
    return tuple(getattr(row, name.removeprefix("-")) for name in order)


def beyond(rows: QuerySet[Row], order: Order, place: Place) -> QuerySet[Row]:
    """Those of the rows that come after the place, whether its row is still there or not."""
    after, same = Q(), Q()
    for name, value in zip(order, place, strict=True):
        column = name.removeprefix("-")
        after |= same & Q(**{f"{column}__{'lt' if name.startswith('-') else 'gt'}": value})
        same &= Q(**{column: value})
    return rows.filter(after)


def written(place: Place) -> str:
    """The place as text for an address, which says nothing to people."""
    plain = [value if isinstance(value, bool | int) else str(value) for value in place]
    return urlsafe_b64encode(json.dumps(plain).encode()).decode().rstrip("=")


def read(text: str, *orders: Order) -> Place | None:
    """The place that was written so, in one of the orders; None for any other text."""
    try:
        plain = json.loads(urlsafe_b64decode(text + "=" * (-len(text) % 4)))
        order = next(order for order in orders if len(order) == len(plain))
        return tuple(_value(value, kind) for value, kind in zip(plain, order.values(), strict=True))
    except (ValueError, TypeError, OverflowError, StopIteration, RecursionError):
        return None


def _value(plain: Any, kind: type[Any]) -> Any:
    """Raises ValueError, TypeError and OverflowError for what is nothing of the kind."""
    if kind is datetime:
        moment = datetime.fromisoformat(plain)
        if moment.tzinfo is None:
            raise ValueError(plain)
        return moment.astimezone(UTC)
    if kind is UUID:
        return UUID(plain)
    if type(plain) is not kind or abs(plain) >= 2**31:
        raise ValueError(plain)
    return plain
