"""Letting the work go on in spite of a caution: by a supervisor, with a reason, for the record."""

from __future__ import annotations

from typing import Any

import pytest

from cases.domain.errors import CanalInUse, NotAllowed, NotHere, NotUsable, SentDifferently, TakenAlready
from cases.domain.plans.changes import Planned, compare
from cases.domain.plans.telling import ChangeKind
from cases.domain.uuid7 import uuid7
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, CautionOverride, ChangeLog, Person, ToothPlanVersion
from cases.services.charting import canals
from cases.services.planning import overrides, plans
from cases.services.planning.plan_input import Asked
from planning.contract.plan_input import Override
from planning.foundation.errors import OverrideNotPossible
from tests.cast import canal_of

REASON = "1.2 mm on two images; I stay at the chair."


@pytest.fixture
def wide(molar: Case, priya: Person, asked: Asked) -> Case:
    """P with an apex of 1.2 mm, and the version that says a supervisor opens it."""
    canals.change_canal(actor=priya, canal=canal_of(molar, "P"), changes={"apex_mm": 1.2})
    plans.propose(actor=priya, case=molar, asked=asked)
    molar.refresh_from_db()
    return molar


@pytest.fixture
def too_wide(molar: Case, priya: Person, asked: Asked) -> Case:
    """P whose first size to bind was 50: it asks for 55, and at most 50 is advised (Glickman & Dumsha, from memory)."""
    canals.change_canal(actor=priya, canal=canal_of(molar, "P"), changes={"first_binder_size": 50})
    plans.propose(actor=priya, case=molar, asked=asked)
    molar.refresh_from_db()
    return molar


def add_override(actor: Person, case: Case, **more: Any) -> CautionOverride:
    fields: dict[str, Any] = {"code": "apex-wide", "canal": "P", "reason": REASON}
    return overrides.add(actor=actor, case=case, **(fields | more))[0]


def status(case: Case) -> ToothPlanVersion:
    return case.versions.get(number=case.versions.count())


def withheld(version: ToothPlanVersion, canal: str) -> list[str]:
    return [w.code for c in plan_of(version).canals if c.canal == canal for w in c.withheld]


def test_the_next_version_opens_the_canal_and_shows_the_reason(
    wide: Case, vale: Person, priya: Person, asked: Asked
) -> None:
    before = status(wide)
    assert (withheld(before, "P"), before.stops) == (["apex-wide"], 1)
    add_override(vale, wide)
    after, created = plans.propose(actor=priya, case=wide, asked=asked)
    assert (created, withheld(after, "P"), after.stops) == (True, [], 0)
    assert plan_input_of(after).overrides == (Override(code="apex-wide", canal="P", reason=REASON),)
    caution = next(c for c in plan_of(after).cautions if c.code == "apex-wide")
    assert caution.overridden == REASON


def test_it_raises_the_revision_and_is_logged_without_its_text(wide: Case, vale: Person) -> None:
    before = wide.revision
    row = add_override(vale, wide)
    wide.refresh_from_db()
    assert wide.revision == before + 1
    line = ChangeLog.objects.get(subject="CautionOverride")
    assert (line.actor, line.verb, line.subject_id) == (vale, "override", str(row.pk))
    assert REASON not in line.after


def test_taken_back_it_withholds_again_and_stays_in_the_record(
    wide: Case, vale: Person, amari: Person, priya: Person, asked: Asked
) -> None:
    row = overrides.withdraw(actor=amari, override=add_override(vale, wide))
    assert (row.withdrawn_by, row.reason) == (amari, REASON)
    again, _ = plans.propose(actor=priya, case=wide, asked=asked)
    assert withheld(again, "P") == ["apex-wide"]
    wide.refresh_from_db()
    overrides.withdraw(actor=vale, override=row)
    row.refresh_from_db()
    assert row.withdrawn_by == amari  # sent twice changes nothing
    assert CautionOverride.objects.count() == 1
    add_override(vale, wide)  # and may be given anew


def test_students_and_coordinators_let_nothing_pass(wide: Case, priya: Person, rosa: Person, vale: Person) -> None:
    for person in (priya, rosa):
        with pytest.raises(NotAllowed):
            add_override(person, wide)
    row = add_override(vale, wide)
    with pytest.raises(NotAllowed):
        overrides.withdraw(actor=priya, override=row)


def test_a_supervisor_of_another_programme_sees_nothing(wide: Case, stranger: Person) -> None:
    with pytest.raises(NotHere):
        add_override(stranger, wide)


def test_what_nobody_may_let_pass_is_refused(wide: Case, vale: Person) -> None:
    for code in ("length-unsettled", "isolation-missing", "hypochlorite-in-block", "no-such-caution"):
        with pytest.raises(OverrideNotPossible):
            add_override(vale, wide, code=code)
    with pytest.raises(OverrideNotPossible):
        add_override(vale, wide, reason="  ")


def test_it_is_about_a_caution_of_the_version_that_stands(wide: Case, opened: Case, vale: Person) -> None:
    with pytest.raises(NotUsable, match="carries no caution"):
        add_override(vale, wide, canal="DB")
    with pytest.raises(NotUsable, match="carries no caution"):
        add_override(vale, wide, canal=None)


def test_before_there_is_a_plan_there_is_nothing_to_let_pass(opened: Case, vale: Person) -> None:
    with pytest.raises(NotUsable, match="no plan yet"):
        add_override(vale, opened)


def test_sent_twice_it_is_one(wide: Case, vale: Person) -> None:
    id_ = uuid7()
    assert add_override(vale, wide, id=id_) == add_override(vale, wide, id=id_)
    with pytest.raises(SentDifferently):
        add_override(vale, wide, id=id_, reason="Another one.")
    with pytest.raises(TakenAlready):
        add_override(vale, wide)


def test_a_canal_that_a_supervisor_spoke_of_stays(wide: Case, vale: Person, priya: Person, asked: Asked) -> None:
    canals.add_canal(actor=priya, case=wide, name="P2", root="P", facts={"apex_mm": 1.2, "reference_point": "P cusp"})
    plans.propose(actor=priya, case=wide, asked=asked)
    add_override(vale, wide, canal="P2")
    with pytest.raises(CanalInUse):
        canals.remove_canal(actor=priya, canal=canal_of(wide, "P2"))


# --- a wide canal: the supervisor's sign-off is a size ---


WIDE: dict[str, Any] = {"code": "wide-canal", "reason": "Own cone, I look at the fit."}


def size_of(version: ToothPlanVersion, canal: str = "P") -> int | None:
    return next(c.final_size for c in plan_of(version).canals if c.canal == canal)


def test_a_wide_canal_is_kept_without_a_size_until_a_supervisor_chose_one(
    too_wide: Case, vale: Person, priya: Person, asked: Asked
) -> None:
    before = status(too_wide)
    listed = before.canal_plans.get(canal="P")
    assert (size_of(before), listed.final_size, withheld(before, "P")) == (None, None, ["wide-canal"])
    add_override(vale, too_wide, **WIDE, final_size=50)
    after, _ = plans.propose(actor=priya, case=too_wide, asked=asked)
    assert (size_of(after), after.canal_plans.get(canal="P").final_size, withheld(after, "P")) == (50, 50, [])
    made = plan_input_of(after).overrides
    assert made == (Override(code="wide-canal", canal="P", reason=WIDE["reason"], final_size=50),)


def test_a_plan_with_a_wide_canal_can_be_asked_for_and_compared(
    too_wide: Case, vale: Person, priya: Person, asked: Asked
) -> None:
    before = status(too_wide)
    plans.submit(actor=priya, version=before)
    add_override(vale, too_wide, **WIDE, final_size=50)
    after, _ = plans.propose(actor=priya, case=too_wide, asked=asked)
    comparison = compare(
        *(Planned(number=each.number, plan_input=plan_input_of(each), plan=plan_of(each)) for each in (before, after))
    )
    of_p = next(canal_ for canal_ in comparison.canals if canal_.canal == "P")
    size = next(change for change in of_p.changes if change.what is ChangeKind.FINAL_SIZE)
    assert (size.before, size.after) == (None, "50/.04")
    assert any(
        change.label == "let pass by a supervisor" or "final size chosen" in change.label for change in of_p.changes
    )


@pytest.mark.parametrize("size", [None, 60, 52])
def test_a_size_that_cannot_be_planned_is_refused(too_wide: Case, vale: Person, size: int | None) -> None:
    """None is no answer, the kit ends at 50, and 52 is no size."""
    with pytest.raises(OverrideNotPossible if size is None else NotUsable) as refused:
        add_override(vale, too_wide, **WIDE, final_size=size)
    assert isinstance(refused.value, OverrideNotPossible | NotUsable)
    assert refused.value.pointer == ("final_size",)
    assert not CautionOverride.objects.exists()


def test_only_a_wide_canal_takes_a_size(wide: Case, vale: Person) -> None:
    with pytest.raises(OverrideNotPossible):
        add_override(vale, wide, final_size=50)


def test_the_same_word_sent_twice_is_one_and_another_size_is_another_word(too_wide: Case, vale: Person) -> None:
    id_ = uuid7()
    first = add_override(vale, too_wide, **WIDE, final_size=50, id=id_)
    assert add_override(vale, too_wide, **WIDE, final_size=50, id=id_).pk == first.pk
    with pytest.raises(SentDifferently):
        add_override(vale, too_wide, **WIDE, final_size=45, id=id_)
    assert '"final_size":50' in ChangeLog.objects.get(subject="CautionOverride").after
