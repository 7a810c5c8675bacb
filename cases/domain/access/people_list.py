"""A list of people to invite, as a spreadsheet saves it: CSV (RFC 4180), or with semicolons or tabs for commas."""

from __future__ import annotations

import csv
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum

from cases.domain.access.invited import MOST_AT_ONCE, Invited, faults_of, same_username
from cases.domain.access.roles import Role
from cases.domain.errors import NotUsable

MOST_CHARACTERS = 200_000
BYTE_ORDER_MARK = "\ufeff"
_SEPARATORS = ",;\t"
_ROLES = ", ".join(Role)


class ListColumn(StrEnum):
    """As the first line names it, whatever the order."""

    NAME = "name"
    USERNAME = "user name"
    ROLE = "role"
    GROUP = "group"


_COLUMN_OF = {"name": ListColumn.NAME, "username": ListColumn.USERNAME, "group": ListColumn.GROUP}


@dataclass(frozen=True, slots=True, kw_only=True)
class LineFault:
    """What is wrong in a line, and where."""

    column: ListColumn
    """As the first line names it."""
    says: str
    """With what to do about it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ListLine:
    """One person of the list."""

    line: int
    """In the file, counted from 1."""
    person: Invited | None
    """Null where something is wrong."""
    faults: tuple[LineFault, ...]


def read_people(text: str) -> tuple[ListLine, ...]:
    """Every line that is not empty. Raises NotUsable where the whole is no such list."""
    text = text.removeprefix(BYTE_ORDER_MARK)
    head = text.partition("\n")[0]
    separator = max(_SEPARATORS, key=head.count)
    reader = csv.reader(text.splitlines(keepends=True), delimiter=separator, strict=True)
    lines: list[ListLine] = []
    first_with: dict[str, int] = {}
    try:
        places = _places(next(reader, []))
        for cells in reader:
            if not any(cell.strip() for cell in cells):
                continue
            if len(lines) == MOST_AT_ONCE:
                raise NotUsable(reason=f"At most {MOST_AT_ONCE} people at once: take the list in parts.", at=("text",))
            lines.append(_line(reader.line_num, cells, places, first_with))
    except csv.Error:
        reason = f"Line {reader.line_num} cannot be read: a quotation mark is not closed. Save the list as CSV again."
        raise NotUsable(reason=reason, at=("text",)) from None
    if not lines:
        raise NotUsable(reason="Nobody stands in the list.", at=("text",))
    return tuple(lines)


def _places(head: Sequence[str]) -> dict[ListColumn, int]:
    """Where each column is. Raises NotUsable."""
    names = [" ".join(cell.casefold().split()) for cell in head]
    missing = [column for column in ListColumn if column not in names]
    if missing:
        reason = f"The first line must name the columns {', '.join(ListColumn)}. Missing: {', '.join(missing)}."
        raise NotUsable(reason=reason, at=("text",))
    # Whatever else a school has in its list is not read by accident: it could be about somebody's life.
    others = [name for name in names if name not in set(ListColumn)]
    if others or len(set(names)) != len(names):
        reason = f"The list has the columns {', '.join(ListColumn)}, each once, and no others. Take the others out."
        raise NotUsable(reason=reason, at=("text",))
    return {column: names.index(column) for column in ListColumn}


def _line(number: int, cells: Sequence[str], places: dict[ListColumn, int], first_with: dict[str, int]) -> ListLine:
    of = {column: " ".join(cells[at].split(" ")).strip() if at < len(cells) else "" for column, at in places.items()}
    faults = tuple(_faults(of, number, first_with))
    if len(cells) > len(places):
        says = (
            f"The line has {len(cells)} cells for {len(places)} columns. Put what has a comma in it in quotation marks."
        )
        faults = (LineFault(column=ListColumn.GROUP, says=says), *faults)
    if faults:
        return ListLine(line=number, person=None, faults=faults)
    person = Invited(
        name=of[ListColumn.NAME],
        username=of[ListColumn.USERNAME],
        role=Role(of[ListColumn.ROLE].casefold()),
        group=of[ListColumn.GROUP],
    )
    return ListLine(line=number, person=person, faults=())


def _faults(of: dict[ListColumn, str], number: int, first_with: dict[str, int]) -> Iterator[LineFault]:
    for part, says in faults_of(name=of[ListColumn.NAME], username=of[ListColumn.USERNAME], group=of[ListColumn.GROUP]):
        yield LineFault(column=_COLUMN_OF[part], says=says)
    for column, says in (
        (ListColumn.NAME, "Nothing stands here. Write the name that others see."),
        (ListColumn.USERNAME, "Nothing stands here. Write the name that they sign in with."),
    ):
        if not of[column]:
            yield LineFault(column=column, says=says)
    if of[ListColumn.ROLE].casefold() not in set(Role):
        yield LineFault(column=ListColumn.ROLE, says=f"'{of[ListColumn.ROLE]}' is no role. Write one of {_ROLES}.")
    username = same_username(of[ListColumn.USERNAME])
    first = first_with.setdefault(username, number)
    if username and first != number:
        says = f"This user name stands in line {first} too. Give each person one of their own."
        yield LineFault(column=ListColumn.USERNAME, says=says)
