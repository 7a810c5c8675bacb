"""Small queries that are put into SQL once: Django takes ten times as long to write one as the database to answer."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from inspect import signature
from typing import Any, Generic, TypeVar, cast
from uuid import UUID

from django.db import DEFAULT_DB_ALIAS, connections, models
from django.db.backends.base.base import BaseDatabaseWrapper
from django.db.models.query import ModelIterable, get_related_populators

Row = TypeVar("Row")
Query = models.QuerySet[Any, Row]

# A query is written once for each number of ids that it is asked for with.
MOST_WRITTEN = 256
_ID = models.UUIDField()
# The type checker knows it as a later Django has it, with one argument more.
_others_of: Callable[..., Sequence[Any]] = get_related_populators
# No row has such an id: it is of no version.
_FIRST = 0xF << 124


_every: list[Prepared[Any]] = []


def prepare_all() -> None:
    """Puts every loaded query into SQL. Raises DatabaseError where the database has to be asked and is not there."""
    for query in _every:
        query.prepare()


class Prepared(Generic[Row]):
    """A query by ids, of whole rows, with others by `select_related`, or of a `values_list` that is not flat.

    `query` makes the query set for ids; it is called with ids that stand in for those it will be asked for with.
    """

    def __init__(self, query: Callable[..., Query[Row]]) -> None:
        self.query = query
        self._written = lru_cache(MOST_WRITTEN)(self._put_into_sql)
        _every.append(self)

    def __call__(self, *ids: UUID) -> list[Row]:
        """The rows for these ids, in the order in which `query` takes them."""
        if not ids:
            return []
        connection = connections[DEFAULT_DB_ALIAS]
        written = self._written(connection.vendor, len(ids))
        with connection.cursor() as cursor:
            cursor.execute(written.sql, written.filled_in([_stored(id_, connection) for id_ in ids]))
            rows = cursor.fetchall()
        return cast(list[Row], list(written.read(rows, connection)))

    def first(self, *ids: UUID) -> Row | None:
        """The first of the rows; None where there is none."""
        return next(iter(self(*ids)), None)

    def prepare(self) -> None:
        """Puts the query into SQL now, for as many ids as it takes; where it takes any number, for one."""
        self._written(connections[DEFAULT_DB_ALIAS].vendor, len(signature(self.query).parameters))

    def _put_into_sql(self, _vendor: str, count: int) -> _Written:
        stand_ins = [UUID(int=_FIRST + number) for number in range(count)]
        asked = self.query(*stand_ins)
        compiler = asked.query.get_compiler(DEFAULT_DB_ALIAS)
        sql, params = compiler.as_sql()
        whole = issubclass(asked._iterable_class, ModelIterable)
        columns = [column for column, *_ in compiler.select]
        places = {_stored(id_, connections[DEFAULT_DB_ALIAS]): place for place, id_ in enumerate(stand_ins)}
        return _Written(
            sql=sql,
            params=tuple(params),
            places={at: places[param] for at, param in enumerate(params) if param in places},
            model=asked.model if whole else None,
            names=[columns[at].target.attname for at in compiler.klass_info["select_fields"]] if whole else [],
            related=_others_of(compiler.klass_info, compiler.select, DEFAULT_DB_ALIAS) if whole else [],
            converters=compiler.get_converters(columns),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Written:
    """A query in SQL, and how its rows are read."""

    sql: str
    params: tuple[Any, ...]
    places: Mapping[int, int]
    """Which of the ids goes where among the parameters."""
    model: type[models.Model] | None
    """None where the rows are tuples."""
    names: list[str]
    """Of the row's own columns, which come first."""
    related: Sequence[Any]
    """What fills in the rows of `select_related`."""
    converters: Mapping[int, Any]

    def filled_in(self, ids: list[Any]) -> list[Any]:
        return [ids[self.places[at]] if at in self.places else param for at, param in enumerate(self.params)]

    def read(self, rows: list[tuple[Any, ...]], connection: BaseDatabaseWrapper) -> Iterator[Any]:
        for row in rows:
            values = list(row)
            for at, (converters, column) in self.converters.items():
                for convert in converters:
                    values[at] = convert(values[at], column, connection)
            yield self._row(values) if self.model else tuple(values)

    def _row(self, values: list[Any]) -> Any:
        row = cast(type[models.Model], self.model).from_db(DEFAULT_DB_ALIAS, self.names, values[: len(self.names)])
        for other in self.related:
            other.populate(values, row)
        return row


def _stored(id_: UUID, connection: BaseDatabaseWrapper) -> Any:
    """The id as the database is given it."""
    return _ID.get_db_prep_value(id_, connection)


def hand_out(parents: Iterable[models.Model], name: str, rows: Sequence[models.Model]) -> None:
    """Gives each parent the rows under `name` that are its own, as `prefetch_related` does with rows of its asking."""
    for parent in parents:
        manager = getattr(parent, name)
        own = manager.get_queryset()
        own._result_cache = [row for row in rows if getattr(row, manager.field.attname) == parent.pk]
        own._prefetch_done = True
        for row in own._result_cache:
            manager.field.set_cached_value(row, parent)
        parent.__dict__.setdefault("_prefetched_objects_cache", {})[name] = own
