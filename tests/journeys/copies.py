"""A case whose like was brought in over the API before: its rows are copied, with names of their own.

What belongs to a case is found by the database's own references; a name is replaced wherever it is written.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Mapping
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from uuid import UUID

from cases.domain.uuid7 import uuid7
from cases.services.planning.plan_input import SEEDS

Row = dict[str, Any]
CASE = "cases_case"


def copied(database: Path, case: str, alias: str) -> str:
    """The id of a case that is as this one, of a patient with this alias."""
    with closing(sqlite3.connect(database, timeout=20)) as records:
        records.row_factory = lambda cursor, row: dict(zip((each[0] for each in cursor.description), row, strict=True))
        # Nothing of it changes in between.
        records.execute("BEGIN IMMEDIATE")
        rows_by_table = _of_case(records, UUID(case).hex)
        new = _new_names(rows_by_table, UUID(case))
        for table, rows in rows_by_table.items():
            for row in rows:
                _insert(records, table, {column: _renamed(value, new) for column, value in row.items()})
        made = new[UUID(case).hex]
        patient = _patient(records, rows_by_table[CASE][0]["programme_id"], alias)
        own = "UPDATE cases_case SET patient_id = ?, created_at = ? WHERE id = ?"
        records.execute(own, (patient, f"{datetime.now(UTC):%F %T.%f}", made))
        records.commit()
    return str(UUID(made))


def _patient(records: sqlite3.Connection, programme: str, alias: str) -> str:
    """Who has this alias; new where nobody has."""
    where = (programme, alias)
    known = records.execute("SELECT id FROM cases_demopatient WHERE programme_id = ? AND alias = ?", where).fetchone()
    if known:
        return str(known["id"])
    made = uuid7().hex
    records.execute("INSERT INTO cases_demopatient (id, programme_id, alias) VALUES (?, ?, ?)", (made, *where))
    return made


def _of_case(records: sqlite3.Connection, case: str) -> Mapping[str, list[Row]]:
    """By table: the case, and all that refers to what was found."""
    rows_by_table = {CASE: list(_rows(records, CASE, "id", case))}
    tables = [each["name"] for each in records.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
    references = [
        (table, each["from"], each["table"], each["to"])
        for table in tables
        for each in records.execute(f"PRAGMA foreign_key_list({table})")
    ]
    growing = True
    while growing:
        growing = False
        for table, column, parent, key in references:
            there = rows_by_table.setdefault(table, [])
            for of in rows_by_table.get(parent, []):
                more = [row for row in _rows(records, table, column, of[key]) if row not in there]
                there += more
                growing = growing or bool(more)
    return rows_by_table


def _rows(records: sqlite3.Connection, table: str, column: str, value: Any) -> Iterator[Row]:
    yield from records.execute(f"SELECT * FROM {table} WHERE {column} = ?", (value,))  # noqa: S608


def _new_names(rows_by_table: Mapping[str, list[Row]], case: UUID) -> Mapping[str, str]:
    """In the order of the old ones: what was made first is listed first."""
    own = sorted(row["id"] for rows in rows_by_table.values() for row in rows if isinstance(row.get("id"), str))
    pairs = [(UUID(name), _drawn_alike(case, uuid7()) if UUID(name) == case else uuid7()) for name in own]
    return {old.hex: new.hex for old, new in pairs} | {str(old): str(new) for old, new in pairs}


def _drawn_alike(case: UUID, new: UUID) -> UUID:
    """A case's name seeds what its plans are drawn from: a plan that is made of the copy is the copied plan's next, and
    what holds for that one may hold for it."""
    return UUID(int=new.int - new.int % SEEDS + case.int % SEEDS)


def _renamed(value: Any, new: Mapping[str, str]) -> Any:
    if not isinstance(value, str):
        return value
    for old, name in new.items():
        value = value.replace(old, name)
    return value


def _insert(records: sqlite3.Connection, table: str, row: Row) -> None:
    # A number the database counts itself. Nothing may refer to it: that would be left as it was.
    counted = isinstance(row.get("id"), int)
    values = {column: value for column, value in row.items() if not (counted and column == "id")}
    places = ", ".join(f":{column}" for column in values)
    records.execute(f"INSERT INTO {table} ({', '.join(values)}) VALUES ({places})", values)  # noqa: S608
