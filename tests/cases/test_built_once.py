"""What the tests put back is what the services make."""

from __future__ import annotations

import re
from typing import Any

import pytest
from django.db import transaction

from cases.models import ChangeLog, LengthReading, Person, Programme
from tests import built_once
from tests.cast import chart, named_in, open_case

OWN = re.compile(r"UUID\('[^']+'\)|[0-9a-f]{8}-[0-9a-f-]{27}|datetime\([^)]+\)|'sent_hash': '[0-9a-f]+'")
"""What is another in every test: identifiers, times, and the hash of what was sent with an identifier in it."""


def rows() -> list[str]:
    """Every row of a record, without what is another in every test; keys that count differ as well."""
    logged: list[tuple[str, dict[str, Any]]] = []
    for (model, key), row in built_once._rows().items():
        columns = built_once._columns(row)
        counts = isinstance(key, int)
        logged.append(
            (model.__name__, {name: value for name, value in columns.items() if not (counts and name == "id")})
        )
    return sorted(OWN.sub("OWN", f"{name} {columns!r}") for name, columns in logged)


def test_lengths_that_were_put_back_are_those_that_were_taken(
    programme: Programme, priya: Person, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(built_once, "_built", {})
    with transaction.atomic():
        case = open_case(programme, priya)
        built_once.built_once("lengths", named_in(case), lambda: chart(case, priya))
        taken = rows()
        transaction.set_rollback(True)
    another = open_case(programme, priya)
    assert rows() != taken
    built_once.built_once("lengths", named_in(another), lambda: pytest.fail("made twice"))
    assert rows() == taken
    read = LengthReading.objects.select_related("canal__tooth", "canal__root")
    assert {(row.canal.tooth.case_id, row.canal.root.tooth_id) for row in read} == {(another.pk, another.pk)}
    logged = ChangeLog.objects.filter(subject="Canal").values_list("subject_id", flat=True)
    assert set(logged) == {str(row.pk) for row in another.tooth.canals.all()}
