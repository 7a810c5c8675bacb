"""What the services make of the same rows in many tests they make once in a process; after that its rows are put back.

They are put back as new rows: with identifiers of their own, times as far back as they lay, and what they name is this
test's.
"""

from __future__ import annotations

from collections.abc import Callable
from copy import copy
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any
from uuid import UUID

from django.apps import apps
from django.db import models
from django.utils import timezone

from cases.domain.uuid7 import uuid7

Row = tuple[type[models.Model], Any]
"""Its table and its key."""


@dataclass(frozen=True, slots=True)
class Built:
    began: datetime
    named: dict[str, UUID]
    """The rows that were there before and may be named in what was made."""
    new: list[models.Model]
    changed: dict[Row, dict[str, Any]]


_built: dict[str, Built] = {}


def built_once(what: str, named: dict[str, UUID], build: Callable[[], object]) -> None:
    """Has `build` make it, or puts back what it made; `named` is alike in every test but for the identifiers."""
    if what in _built:
        _put_back(_built[what], named)
        return
    began, before = timezone.now(), _rows()
    build()
    after = _rows()
    new = [row for key, row in after.items() if key not in before]
    changed = {key: _difference(before[key], after[key]) for key in before}
    _built[what] = Built(began, named, new, {key: columns for key, columns in changed.items() if columns})


def _put_back(built: Built, named: dict[str, UUID]) -> None:
    own = {built.named[name]: identifier for name, identifier in named.items()}
    own |= {row.pk: uuid7() for row in built.new if isinstance(row.pk, UUID) and row.pk not in own}
    later = timezone.now() - built.began
    for model in dict.fromkeys(type(row) for row in built.new):
        rows = [_like(row, own, later) for row in built.new if type(row) is model]
        model._base_manager.bulk_create(rows)
    for (model, key), columns in built.changed.items():
        values = {name: _now(value, own, later) for name, value in columns.items()}
        model._base_manager.filter(pk=own.get(key, key)).update(**values)


def _rows() -> dict[Row, models.Model]:
    """Every row of a record, the older first."""
    every = (model._base_manager.order_by("pk") for model in apps.get_app_config("cases").get_models())
    return {(type(row), row.pk): row for rows in every for row in rows}


def _columns(row: models.Model) -> dict[str, Any]:
    return {field.attname: getattr(row, field.attname) for field in row._meta.concrete_fields}


def _difference(before: models.Model, after: models.Model) -> dict[str, Any]:
    was = _columns(before)
    return {name: value for name, value in _columns(after).items() if value != was[name]}


def _like(row: models.Model, own: dict[UUID, UUID], later: timedelta) -> models.Model:
    made = copy(row)
    made._state = models.base.ModelState()
    for name, value in _columns(row).items():
        setattr(made, name, _now(value, own, later))
    if isinstance(row._meta.pk, models.AutoField):
        made.pk = None
    return made


def _now(value: Any, own: dict[UUID, UUID], later: timedelta) -> Any:
    match value:
        case datetime():
            return value + later
        case UUID():
            return own.get(value, value)
        case str() if len(value) >= len(str(UUID(int=0))):
            for was, now in own.items():
                value = value.replace(str(was), str(now))
            return value
        case dict():
            return {key: _now(each, own, later) for key, each in value.items()}
        case list():
            return [_now(each, own, later) for each in value]
    return value
