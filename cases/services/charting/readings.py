"""Taking lengths and junctions. What was read is kept for good."""

from __future__ import annotations

from dataclasses import replace
from typing import Any, TypeVar
from uuid import UUID

from django.db import transaction

from cases.domain.errors import NotUsable
from cases.domain.uuid7 import uuid7
from cases.mapping.charts import length_context, length_of
from cases.mapping.kits import thresholds_of
from cases.models import Canal, Case, JunctionReading, LengthReading, Marking, Person
from cases.models.readings import ReadingRow
from cases.services.common import audit, idempotency, parts
from cases.services.common.locking import locked, raise_revision
from planning.contract.plan_input import Junction
from planning.foundation.counts import at_most
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import PlanningError
from planning.foundation.tables import Figures
from planning.lengths.readings import LengthState, Reading
from planning.lengths.working_length import settle

MOST_READINGS = at_most("readings").most  # as the planner takes
Row = TypeVar("Row", bound=ReadingRow)


@transaction.atomic
def take_length(
    *,
    actor: Person,
    canal: Canal,
    reading: Reading,
    marking: Marking | None = None,
    id: UUID | None = None,
) -> tuple[LengthReading, bool]:
    """A reading of the canal's length and True; False where it was sent before.

    Raises NotAllowed, SentDifferently, and what the planner refuses: LengthOutOfBounds, ReadingNotUsable.
    """
    parts.refuse_unless_works_now(actor, canal.tooth.case, "Lengths are taken")
    return keep_length(actor=actor, canal=canal, reading=reading, marking=marking, id=id)


@transaction.atomic
def keep_length(
    *, actor: Person, canal: Canal, reading: Reading, marking: Marking | None = None, id: UUID | None = None
) -> tuple[LengthReading, bool]:
    """The same without asking who may: the caller knows that the person worked the case then. Raises what `take_length`
    does."""
    case = locked(canal.tooth.case_id)
    sent_hash = idempotency.fingerprint(actor=actor, to=canal.pk, what={"reading": reading})
    if before := idempotency.sent_before(LengthReading, id, sent_hash):
        return before, False
    if not canal.reference_point:
        reason = f"Choose the reference point of {canal.name} first: a length without one says nothing."
        raise NotUsable(reason=reason, at=("reading", "reference_point"))
    _refuse_absurd(canal, case, reading)
    row = _add(LengthReading, canal, actor, id, sent_hash, reading.method, reading, marking=marking)
    audit.changed(actor=actor, verb="take", subject=row, case=case, after={"canal": canal.name, "method": row.method})
    raise_revision(case)
    return row, True


@transaction.atomic
def record_junction(
    *,
    actor: Person,
    canal: Canal,
    junction: Junction,
    id: UUID | None = None,
) -> tuple[JunctionReading, bool]:
    """Where the canal joins and True; False where it was sent before.

    The canal's present length is kept with it unless given: a later correction of the length does not move the
    junction. Raises NotAllowed, NotUsable, SentDifferently.
    """
    parts.refuse_unless_works_now(actor, canal.tooth.case, "Junctions are taken")
    case = locked(canal.tooth.case_id)
    sent_hash = idempotency.fingerprint(actor=actor, to=canal.pk, what={"junction": junction})
    if before := idempotency.sent_before(JunctionReading, id, sent_hash):
        return before, False
    measured = replace(junction, at_length_mm=junction.at_length_mm or _length_now(canal, case))
    _refuse_outside(canal, measured)
    row = _add(JunctionReading, canal, actor, id, sent_hash, measured.method, measured)
    audit.changed(actor=actor, verb="take", subject=row, case=case, after={"canal": canal.name, "method": row.method})
    raise_revision(case)
    return row, True


def _refuse_absurd(canal: Canal, case: Case, reading: Reading) -> None:
    if canal.readings.filter(struck_at=None).count() >= MOST_READINGS:
        raise NotUsable(reason=f"{canal.name} has {MOST_READINGS} readings; more are not taken.")
    try:
        settle([reading], length_context(canal, case.setting), _figures(case))
    except PlanningError as refusal:
        refusal.pointer = ("reading", *refusal.pointer[1:])  # the planner counts readings, here there is one
        raise


def _length_now(canal: Canal, case: Case) -> float | None:
    length = length_of(canal, case.setting, _figures(case))
    return length.working_length_mm if length.state is LengthState.SETTLED else None


def _refuse_outside(canal: Canal, junction: Junction) -> None:
    most = junction.at_length_mm
    if junction.from_terminus_mm <= 0 or (most is not None and junction.from_terminus_mm >= most):
        beyond = "" if most is None else f" and less than the canal's length of {most:g} mm"
        reason = f"{canal.name}: the junction must be more than 0 mm from the terminus{beyond}. Check the reading."
        raise NotUsable(reason=reason, at=("junction", "from_terminus_mm"))


def _figures(case: Case) -> Figures:
    return Figures(thresholds_of(case.programme_id))


def _add(
    model: type[Row],
    canal: Canal,
    actor: Person,
    id_: UUID | None,
    sent_hash: str,
    method: str,
    value: Any,
    **more: Any,
) -> Row:
    last = model._default_manager.filter(canal=canal).order_by("-number").values_list("number", flat=True).first()
    row = model(
        id=id_ or uuid7(),
        sent_hash=sent_hash,
        canal=canal,
        number=(last or 0) + 1,
        method=method,
        text=canonical_text(value),
        actor=actor,
        **more,
    )
    row.save(force_insert=True)
    return row
