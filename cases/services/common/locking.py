"""The lock under which a case changes. Order of locks: case, version, event.

SQLite has no row locks; there the whole transaction holds the write lock from its start (IMMEDIATE).
"""

from __future__ import annotations

from typing import Any

from cases.domain.errors import ChangedSince
from cases.models import Case
from cases.models.prepared import Prepared

# With `no_key` PostgreSQL lets rows that point to the case be added meanwhile: their foreign keys do not wait.
_LOCKED = Prepared(lambda case: Case.objects.select_for_update(no_key=True).filter(pk=case))


def locked(case_id: Any) -> Case:
    """The case, held until the transaction ends."""
    case = _LOCKED.first(case_id)
    if case is None:
        raise Case.DoesNotExist
    return case


def raise_revision(case: Case) -> None:
    """Something changed that a plan could rest on: versions made before are stale from now on."""
    case.revision += 1
    case.save(update_fields=["revision"])


def refuse_changed(case: Case, seen_revision: int | None) -> None:
    """Raises ChangedSince where the sender had seen another revision."""
    if seen_revision is not None and seen_revision != case.revision:
        raise ChangedSince(what="The case")
