"""Letting the work go on in spite of a caution, and taking that back."""

from __future__ import annotations

import json
from dataclasses import replace
from uuid import UUID

from django.db import transaction
from django.utils import timezone

from cases.domain.access.permissions import May
from cases.domain.errors import NotUsable, TakenAlready
from cases.domain.plans.lifecycle import PlanState
from cases.domain.uuid7 import uuid7
from cases.mapping.plans import plan_input_of
from cases.models import Canal, Case, CautionOverride, Person, ToothPlanVersion
from cases.services.common import audit, idempotency
from cases.services.common.guard import guard
from cases.services.common.locking import locked, raise_revision
from planning.contract.cautions import refuse_override
from planning.contract.plan_input import Override
from planning.foundation.errors import PlanningError
from planning.whole_tooth.plan import plan


@transaction.atomic
def add(
    *,
    actor: Person,
    case: Case,
    code: str,
    canal: str | None,
    reason: str,
    final_size: int | None = None,
    id: UUID | None = None,
) -> tuple[CautionOverride, bool]:
    """A supervisor lets the work go on, and True; False where it was sent before.

    It is about a caution of the version that stands; of a wide canal it brings the size. Raises NotAllowed,
    OverrideNotPossible, NotUsable, TakenAlready.
    """
    guard(May.OVERRIDE, actor, case)
    case = locked(case.pk)
    # A size is named where there is one, so that what an app of before sends again is known.
    about = {"code": code, "canal": canal} | ({} if final_size is None else {"final_size": final_size})
    sent_hash = idempotency.fingerprint(actor=actor, to=case.pk, what={**about, "reason": reason})
    if before := idempotency.sent_before(CautionOverride, id, sent_hash):
        return before, False
    override = Override(code=code, canal=canal, reason=reason, final_size=final_size)
    refuse_override(override)
    version = _carrying(case, code, canal)
    if final_size is not None:
        _refuse_unplannable(version, override)
    charted = None if canal is None else Canal.objects.get(tooth__case=case, name=canal)
    if case.overrides.filter(code=code, canal=charted, withdrawn_at=None).exists():
        raise TakenAlready(what="An override of", name=code, at=("code",))
    row = CautionOverride.objects.create(
        id=id or uuid7(),
        sent_hash=sent_hash,
        case=case,
        version=version,
        code=code,
        canal=charted,
        reason=reason,
        final_size=final_size,
        supervisor=actor,
    )
    audit.changed(actor=actor, verb="override", subject=row, case=case, after=about)
    raise_revision(case)
    return row, True


def _carrying(case: Case, code: str, canal: str | None) -> ToothPlanVersion:
    """The version that stands. Raises NotUsable where it does not carry the caution."""
    version: ToothPlanVersion | None = case.versions.exclude(state=PlanState.SUPERSEDED).first()
    if version is None:
        raise NotUsable(reason="There is no plan yet whose cautions could be let pass.", at=("code",))
    cautions = json.loads(version.output_text)["cautions"]
    if (code, canal) not in {(caution["code"], caution["canal"]) for caution in cautions}:
        about = "of the tooth" if canal is None else f"of {canal}"
        reason = f"Version {version.number} carries no caution '{code}' {about}."
        raise NotUsable(reason=reason, at=("code",))
    if canal is not None and not case.tooth.canals.filter(name=canal).exists():
        raise NotUsable(reason=f"The tooth has no canal {canal} any more.", at=("canal",))
    return version


def _refuse_unplannable(version: ToothPlanVersion, chosen: Override) -> None:
    """Raises NotUsable for a size that the version's kit or technique cannot make: the student could not plan by it."""
    plan_input = plan_input_of(version)
    others = tuple(
        override for override in plan_input.overrides if (override.code, override.canal) != (chosen.code, chosen.canal)
    )
    try:
        # Without samples: whether a size can be made does not hang on bands.
        made = plan(replace(plan_input, samples=0, overrides=(*others, chosen)))
    except PlanningError as refusal:
        raise NotUsable(reason=str(refusal), at=("final_size",)) from refusal
    lacking = next(
        (caution for caution in made.cautions if (caution.code, caution.canal) == ("kit-lacks-size", chosen.canal)),
        None,
    )
    if lacking is not None:
        raise NotUsable(reason=f"{lacking.says} {lacking.do}", at=("final_size",))


@transaction.atomic
def withdraw(*, actor: Person, override: CautionOverride) -> CautionOverride:
    """Takes it back: the caution withholds again from the next version on. Raises NotAllowed."""
    guard(May.OVERRIDE, actor, override.case)
    case = locked(override.case_id)
    row = CautionOverride.objects.get(pk=override.pk)
    if row.withdrawn_at is not None:
        return row  # sent twice
    row.withdrawn_at, row.withdrawn_by = timezone.now(), actor
    row.save(update_fields=["withdrawn_at", "withdrawn_by"])
    audit.changed(actor=actor, verb="withdraw", subject=row, case=case, before={"code": row.code})
    raise_revision(case)
    return row
