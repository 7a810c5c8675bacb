"""Correcting a patient's alias: the old text is removed everywhere, and the log keeps that it was changed."""

from __future__ import annotations

from collections.abc import Sequence

from django.db import transaction

from cases.domain.access.permissions import May, may
from cases.domain.alias import alias_of
from cases.domain.errors import NotAllowed
from cases.models import Case, DemoPatient, Person, Programme
from cases.services.common import audit, kept_answers
from cases.services.common.guard import actor_in, guard
from cases.services.common.locking import locked, refuse_changed
from cases.services.images import gone


@transaction.atomic
def correct(*, actor: Person, case: Case, seen_revision: int | None, alias: str, is_no_name: bool) -> Case:
    """Gives the patient another alias, in this case and in all others. Plans stay valid: none rests on an alias.

    Neither text is logged. Raises NotAllowed, ChangedSince, AliasRefused, AliasLooksLikeAName.
    """
    guard(May.CORRECT_ALIAS, actor, case)
    Programme.objects.select_for_update(no_key=True).get(pk=case.programme_id)  # one correction at a time
    case = locked(case.pk)
    refuse_changed(case, seen_revision)
    kept = alias_of(alias, is_no_name=is_no_name)
    old = DemoPatient.objects.select_for_update().get(pk=case.patient_id)
    if old.alias == kept:
        return case
    cases = list(Case.objects.filter(patient=old).order_by("pk"))
    old_text = old.alias
    _refuse_others(actor, cases)
    there = DemoPatient.objects.filter(programme_id=case.programme_id, alias=kept).first()
    # An alias is one patient in a programme: where it is there already, the cases go over to that one.
    if there is None:
        old.alias = kept
        old.save(update_fields=["alias"])
    else:
        Case.objects.filter(patient=old).update(patient=there)
        old.delete()
    for other in cases:
        audit.changed(actor=actor, verb="correct_alias", subject=other, case=other)
    # The old text may have been somebody's name.
    kept_answers.forget_all_with(old_text)
    gone.from_the_file()
    return Case.objects.get(pk=case.pk)


def _refuse_others(actor: Person, cases: Sequence[Case]) -> None:
    """Raises NotAllowed where the patient has another student's case too, and the actor may not correct that one."""
    for other in cases:
        if not may(May.CORRECT_ALIAS, actor_in(actor, other.programme_id), student_id=other.student_id):
            raise NotAllowed(reason="Another student's case has this alias too. Ask a supervisor to correct it.")
