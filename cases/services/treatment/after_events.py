"""Keeps what is made from a case's events whenever some come in: their fold, its line in the list, what was used."""

from __future__ import annotations

from collections.abc import Sequence
from uuid import UUID

from cases.mapping import folds
from cases.models import Case, FoldKept, ToothPlanVersion, TreatmentEvent
from cases.models.whole_rows import WholeRows
from cases.services.treatment import instrument_uses, running_work

_FOLDS = WholeRows(FoldKept)


def keep(
    case: Case,
    *,
    new: Sequence[TreatmentEvent] = (),
    after: UUID | None = None,
    versions: Sequence[ToothPlanVersion] | None = None,
) -> None:
    """Folds the new events and stores what follows from them. The caller holds the case's lock.

    `new` are the events just written, and `after` is the last event before them. `versions` are all of the case, where
    the caller has them at hand.
    """
    work = folds.folded(case.pk, new=new, after=after)
    if work is None:
        instrument_uses.keep_before_a_plan(case)
        return
    used = instrument_uses.keep(case, work, versions)
    if work.new:
        _FOLDS.put(
            FoldKept(
                case=case,
                version_id=work.version_id,
                position=work.position,
                last_id=work.last_id,
                code=folds.CODE,
                text=folds.text_of(work, used),
            )
        )
    running_work.keep(case, work)
