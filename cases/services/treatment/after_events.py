"""Keeps what is made from a case's events whenever some come in: their fold, its line in the list, what was used."""

from __future__ import annotations

from collections.abc import Sequence
from uuid import UUID

from cases.mapping import folds
from cases.models import Case, FoldKept, ToothPlanVersion, TreatmentEvent
from cases.services.treatment import instrument_uses, running_work


def keep(
    case: Case,
    *,
    new: Sequence[TreatmentEvent] = (),
    after: UUID | None = None,
    versions: Sequence[ToothPlanVersion] | None = None,
) -> None:
    """Folds what is new; the caller holds the case.

    `new` are the events just written, where `after` was the last before them, and `versions` all of the case, where
    they are at hand.
    """
    found = folds.folded(case.pk, new=new, after=after)
    if found is None:
        instrument_uses.keep_before_a_plan(case)
        return
    used = instrument_uses.keep(case, found, versions)
    if found.new:
        kept = FoldKept(
            case=case,
            version_id=found.version_id,
            position=found.position,
            last_id=found.last_id,
            code=folds.CODE,
            text=folds.text_of(found, used),
        )
        kept.save(force_update=not found.whole)
    running_work.keep(case, found)
