"""Proposing, submitting, deciding: what each does to the versions of a case."""

from __future__ import annotations

from dataclasses import replace

import pytest

from cases.domain.errors import (
    ChangedSince,
    MoveNotPossible,
    NoSuchCanal,
    NotAllowed,
    NotHere,
    NothingSaid,
    NotUsable,
    PlanStale,
    ReasonMissing,
    SentDifferently,
)
from cases.domain.plans.lifecycle import Decision
from cases.domain.plans.status import PlanStatusState
from cases.domain.plans.telling import ChangeKind
from cases.domain.uuid7 import uuid7
from cases.mapping.plans import plan_input_of, plan_of
from cases.models import Case, ChangeLog, Kit, Person, Programme, ThresholdOverride, ToothPlanVersion
from cases.queries import plans as plan_queries
from cases.services.charting import canals, cases, readings
from cases.services.people import thresholds
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from cases.services.planning.reviews import Remark
from planning.contract.canal_facts import WallInput
from planning.contract.plan_input import Choices
from planning.foundation.encoding import canonical_text, digest
from planning.foundation.errors import KitLacks, ToothNotPlanned
from planning.foundation.facts import Bears
from planning.lengths.readings import ConfirmingImage
from planning.whole_tooth.plan import plan
from tests import factories
from tests.cast import canal_of, decide, open_case, with_size
from tests.planning.given import OPEN_30, SECOND_KIT
from tests.planning.given import molar as check_molar


def change_something(case: Case, student: Person) -> None:
    """A further reading, which says the same as before."""
    reading = ConfirmingImage(set_mm=18.5, tip_short_mm=0.5, reference_point="DB cusp")
    readings.take_length(actor=student, canal=canal_of(case, "DB"), reading=reading)


def test_a_case_is_planned_as_the_planner_plans_it(proposed: ToothPlanVersion) -> None:
    assert plan_input_of(proposed) == plan_input_as_stored(proposed)
    assert plan_of(proposed) == plan(plan_input_of(proposed))
    stops = {row.canal: (row.stop_um, row.end_um) for row in proposed.canal_plans.all()}
    # The check case of the molar, as given by those who asked for it.
    assert stops == {
        "MB1": (19_500, 19_500),
        "MB2": (19_000, 16_000),
        "DB": (18_000, 18_000),
        "P": (21_500, 21_500),
    }


def plan_input_as_stored(version: ToothPlanVersion) -> object:
    """The planner's own check case: the junction carries the length it was measured at, the kit is in order."""
    plan_input = plan_input_of(version)
    same = {"kit": plan_input.kit, "canals": plan_input.canals, "roots": plan_input.roots, "seed": plan_input.seed}
    same["samples"] = plans.SAMPLES
    junction = next(canal.junction for canal in plan_input.canals if canal.name == "MB2")
    assert junction is not None
    assert junction.at_length_mm == 19.0
    assert {c.name: c.readings for c in plan_input.canals} == {c.name: c.readings for c in check_molar().canals}
    return check_molar(**same)


def test_what_was_previewed_is_what_is_kept(molar: Case, priya: Person, asked: Asked) -> None:
    before = plans.preview(actor=priya, case=molar, asked=asked).plan
    version, _ = plans.propose(actor=priya, case=molar, asked=asked)
    assert canonical_text(before) == version.output_text


def test_the_hash_is_of_the_texts_as_stored(proposed: ToothPlanVersion) -> None:
    assert proposed.hash == digest(f"{proposed.input_text}\n{proposed.output_text}")


def test_a_case_draws_the_same_samples_every_time(
    priya: Person, proposed: ToothPlanVersion, asked: Asked, programme: Programme
) -> None:
    again, _ = plans.propose(actor=priya, case=proposed.case, asked=with_size(asked, "P", 45, "Wide."))
    other = open_case(programme, priya, patient_alias="Bench 2")
    elsewhere, _ = plans.propose(actor=priya, case=other, asked=asked)
    seeds = [plan_input_of(version).seed for version in (proposed, again, elsewhere)]
    assert seeds[0] == seeds[1] != seeds[2]


def test_a_preview_stores_nothing(priya: Person, molar: Case, asked: Asked) -> None:
    shown = plans.preview(actor=priya, case=molar, asked=asked).plan
    assert len(shown.canals) == 4
    assert not ToothPlanVersion.objects.exists()


def test_the_same_again_is_the_same_version(priya: Person, molar: Case, asked: Asked) -> None:
    first, made = plans.propose(actor=priya, case=molar, asked=asked)
    second, made_again = plans.propose(actor=priya, case=molar, asked=asked)
    assert (made, made_again, second.pk) == (True, False, first.pk)


def test_sent_twice_under_one_id_it_is_kept_once(priya: Person, molar: Case, asked: Asked) -> None:
    id_ = uuid7()
    first, _ = plans.propose(actor=priya, case=molar, asked=asked, id=id_)
    assert first.pk == id_
    assert plans.propose(actor=priya, case=molar, asked=asked, id=id_) == (first, False)
    with pytest.raises(SentDifferently):
        plans.propose(actor=priya, case=molar, asked=with_size(asked, "P", 45), id=id_)


def test_another_size_is_another_version_and_takes_the_place(
    priya: Person, submitted: ToothPlanVersion, asked: Asked
) -> None:
    second, _ = plans.propose(actor=priya, case=submitted.case, asked=with_size(asked, "P", 45))
    submitted.refresh_from_db()
    assert (second.number, second.state, submitted.state) == (2, "draft", "superseded")
    assert second.intent_hash != submitted.intent_hash


def test_a_later_change_of_the_kit_touches_no_plan(proposed: ToothPlanVersion, kit: Kit) -> None:
    before = proposed.input_text
    kit.instruments.all().delete()
    proposed.refresh_from_db()
    assert proposed.input_text == before
    assert plan(plan_input_of(proposed)) == plan_of(proposed)


def test_a_changed_plan_must_be_asked_for_again(
    priya: Person, vale: Person, approved: ToothPlanVersion, asked: Asked
) -> None:
    case = approved.case
    second, _ = plans.propose(actor=priya, case=case, asked=with_size(asked, "P", 45))
    assert plan_queries.status_of(case).state is PlanStatusState.APPROVAL_VOID
    plans.submit(actor=priya, version=second)
    second.refresh_from_db()
    decide(vale, second, Decision.APPROVED)
    assert plan_queries.status_of(case).state is PlanStatusState.APPROVED


def test_going_back_to_what_was_approved_must_be_asked_for_again_too(
    priya: Person, approved: ToothPlanVersion, asked: Asked
) -> None:
    plans.propose(actor=priya, case=approved.case, asked=with_size(asked, "P", 45))
    back, made = plans.propose(actor=priya, case=approved.case, asked=asked)
    assert (back.pk, made, back.state) == (approved.pk, False, "draft")
    assert plan_queries.status_of(approved.case).state is PlanStatusState.APPROVAL_VOID


def test_a_changed_case_voids_the_approval(priya: Person, approved: ToothPlanVersion) -> None:
    change_something(approved.case, priya)
    case = Case.objects.get(pk=approved.case_id)
    assert plan_queries.status_of(case).state is PlanStatusState.APPROVAL_VOID


def test_changed_there_and_back_it_still_has_to_be_asked_for(
    priya: Person, approved: ToothPlanVersion, asked: Asked
) -> None:
    case = Case.objects.get(pk=approved.case_id)
    for isolated in (True, False):
        case = cases.change_case(actor=priya, case=case, seen_revision=case.revision, changes={"isolated": isolated})
    back, made = plans.propose(actor=priya, case=case, asked=asked)
    assert (back.pk, made, back.state, back.case_revision) == (approved.pk, False, "draft", case.revision)


def test_a_stale_plan_is_neither_submitted_nor_approved(
    priya: Person, vale: Person, proposed: ToothPlanVersion, asked: Asked
) -> None:
    change_something(proposed.case, priya)
    with pytest.raises(PlanStale, match="planned again"):
        plans.submit(actor=priya, version=proposed)
    fresh, _ = plans.propose(actor=priya, case=proposed.case, asked=asked)
    plans.submit(actor=priya, version=fresh)
    change_something(proposed.case, priya)
    with pytest.raises(PlanStale):
        decide(vale, fresh, Decision.APPROVED)


def test_a_submission_can_be_taken_back(priya: Person, submitted: ToothPlanVersion) -> None:
    assert plans.withdraw(actor=priya, version=submitted).state == "draft"
    with pytest.raises(MoveNotPossible):
        plans.withdraw(actor=priya, version=submitted)


def test_submitted_twice_it_is_asked_once(priya: Person, submitted: ToothPlanVersion) -> None:
    again = plans.submit(actor=priya, version=submitted)
    assert (again.asked, again.submitted_at) == (1, submitted.submitted_at)


def test_a_returned_plan_can_be_submitted_as_it_is(priya: Person, vale: Person, submitted: ToothPlanVersion) -> None:
    decide(vale, submitted, Decision.RETURNED)
    again = plans.submit(actor=priya, version=submitted)
    decide(vale, again, Decision.APPROVED)
    assert [review.decision for review in submitted.reviews.order_by("asked")] == ["returned", "approved"]


# --- deciding ---


def test_a_return_carries_its_remarks_to_the_canal(vale: Person, submitted: ToothPlanVersion) -> None:
    review = decide(vale, submitted, Decision.RETURNED, note="", remarks=[Remark(canal="MB2", text="Too deep.")])
    assert [(r.canal_plan.canal, r.text) for r in review.remarks.all()] == [("MB2", "Too deep.")]


def test_a_return_without_a_word_is_refused(vale: Person, submitted: ToothPlanVersion) -> None:
    with pytest.raises(NothingSaid):
        decide(vale, submitted, Decision.RETURNED, note="  ")


def test_a_remark_on_no_canal_leaves_nothing_behind(vale: Person, submitted: ToothPlanVersion) -> None:
    with pytest.raises(NoSuchCanal, match="MB1, MB2, DB, P"):
        decide(vale, submitted, Decision.RETURNED, remarks=[Remark(canal="MB3", text="Look for it.")])
    submitted.refresh_from_db()
    assert (submitted.state, submitted.reviews.count()) == ("waiting", 0)


def test_only_the_version_on_the_screen_is_approved(vale: Person, submitted: ToothPlanVersion) -> None:
    with pytest.raises(ChangedSince):
        decide(vale, submitted, Decision.APPROVED, seen_hash="0" * 64)


def test_the_second_supervisor_is_told_that_another_was_first(amari: Person, approved: ToothPlanVersion) -> None:
    with pytest.raises(MoveNotPossible, match="approved"):
        decide(amari, approved, Decision.RETURNED)


def test_a_decision_sent_twice_is_one_decision(vale: Person, submitted: ToothPlanVersion) -> None:
    id_ = uuid7()
    first = decide(vale, submitted, Decision.APPROVED, id=id_)
    assert decide(vale, submitted, Decision.APPROVED, id=id_) == first
    with pytest.raises(SentDifferently):
        decide(vale, submitted, Decision.APPROVED, id=id_, note="Another word.")


def test_students_decide_nothing(priya: Person, tom: Person, rosa: Person, submitted: ToothPlanVersion) -> None:
    for person in (priya, tom, rosa):
        with pytest.raises(NotAllowed):
            decide(person, submitted, Decision.APPROVED)


def test_a_supervisor_of_another_programme_sees_no_such_plan(stranger: Person, submitted: ToothPlanVersion) -> None:
    with pytest.raises(NotHere):
        decide(stranger, submitted, Decision.APPROVED)


def test_somebody_who_became_a_supervisor_does_not_decide_on_their_own(
    priya: Person, submitted: ToothPlanVersion
) -> None:
    priya.memberships.update(role="supervisor")
    with pytest.raises(NotAllowed, match="their own"):
        decide(priya, submitted, Decision.APPROVED)


# --- what is refused before a plan comes about ---


def test_a_kit_of_another_programme_is_none(priya: Person, molar: Case, elsewhere: Programme, asked: Asked) -> None:
    other = factories.kit_row(elsewhere, SECOND_KIT)
    with pytest.raises(NotUsable, match="no such kit"):
        plans.preview(
            actor=priya, case=molar, asked=Asked(kit_id=other.pk, technique="crown-down", choices=asked.choices)
        )


def test_a_technique_nobody_knows(priya: Person, molar: Case, asked: Asked) -> None:
    with pytest.raises(NotUsable, match="crown-down, step-back"):
        plans.preview(actor=priya, case=molar, asked=replace(asked, technique="guess"))


def test_a_taper_the_kit_lacks(priya: Person, molar: Case, asked: Asked) -> None:
    with pytest.raises(KitLacks):
        plans.propose(actor=priya, case=molar, asked=replace(asked, choices=replace(asked.choices, series_taper=7)))
    assert not ToothPlanVersion.objects.exists()


def test_a_size_the_kit_lacks_keeps_one_canal_from_it(priya: Person, molar: Case, asked: Asked) -> None:
    version, _ = plans.propose(actor=priya, case=molar, asked=with_size(asked, "P", 60, "Wide."))
    made = plan_of(version)
    assert {canal_plan.canal for canal_plan in made.canals if canal_plan.withheld} == {"P"}
    assert [caution.canal for caution in made.cautions if caution.code == "kit-lacks-size"] == ["P"]


def test_a_primary_tooth_is_charted_and_not_planned(programme: Programme, priya: Person, kit: Kit) -> None:
    case = open_case(programme, priya, "75")
    asked = Asked(kit_id=kit.pk, technique="crown-down", choices=Choices(needle=OPEN_30))
    with pytest.raises(ToothNotPlanned):
        plans.preview(actor=priya, case=case, asked=asked)


def test_a_supervisor_plans_nothing(vale: Person, molar: Case, asked: Asked) -> None:
    with pytest.raises(NotAllowed):
        plans.preview(actor=vale, case=molar, asked=asked)


def test_a_size_outside_the_range_is_not_submitted_without_a_reason(priya: Person, molar: Case, asked: Asked) -> None:
    silent, _ = plans.propose(actor=priya, case=molar, asked=with_size(asked, "MB1", 45))
    with pytest.raises(ReasonMissing, match="MB1: "):
        plans.submit(actor=priya, version=silent)
    version, _ = plans.propose(actor=priya, case=molar, asked=with_size(asked, "MB1", 45, "Wide on the image."))
    assert plans.submit(actor=priya, version=version).state == "waiting"


# --- the programme's own figures ---


def test_a_figure_of_the_programme_changes_the_plan(priya: Person, rosa: Person, molar: Case, asked: Asked) -> None:
    thresholds.set_threshold(actor=rosa, programme_id=molar.programme_id, key="set_back.none", value=0.5)
    shown = plans.preview(actor=priya, case=molar, asked=asked).plan
    p = next(canal for canal in shown.canals if canal.canal == "P")
    assert p.length.stop_mm == 22.0
    thresholds.set_threshold(actor=rosa, programme_id=molar.programme_id, key="set_back.none", value=None)
    assert not ThresholdOverride.objects.exists()


# --- what changed, and the log ---


def test_what_changed_against_the_last_decided_version(
    priya: Person, vale: Person, submitted: ToothPlanVersion, asked: Asked
) -> None:
    decide(vale, submitted, Decision.RETURNED)
    second, _ = plans.propose(actor=priya, case=submitted.case, asked=with_size(asked, "P", 45, "Wide."))
    changes = plan_queries.changes(second, None)
    assert changes is not None
    assert (changes.from_number, changes.to_number) == (1, 2)
    assert [canal.canal for canal in changes.canals] == ["P"]
    by_kind = {change.what: (change.before, change.after) for change in changes.canals[0].changes}
    assert by_kind[ChangeKind.FINAL_SIZE] == ("35/.04", "45/.04")


def test_nothing_changed_against_itself(proposed: ToothPlanVersion) -> None:
    changes = plan_queries.changes(proposed, 1)
    assert changes is not None
    assert changes.nothing


def test_a_first_version_has_nothing_to_be_compared_with(proposed: ToothPlanVersion) -> None:
    assert plan_queries.changes(proposed, None) is None


def test_a_moved_length_shows_in_the_changes(priya: Person, approved: ToothPlanVersion, asked: Asked) -> None:
    reading = ConfirmingImage(set_mm=18.0, tip_short_mm=0.0, reference_point="DB cusp")
    readings.take_length(actor=priya, canal=canal_of(approved.case, "DB"), reading=reading)
    second, _ = plans.propose(actor=priya, case=approved.case, asked=asked)
    changes = plan_queries.changes(second, None)
    assert changes is not None
    by_kind = {c.what: (c.before, c.after) for canal in changes.canals for c in canal.changes if canal.canal == "DB"}
    assert by_kind[ChangeKind.LENGTH] == ("18", "17")
    assert by_kind[ChangeKind.END] == ("18", "17")


def test_what_is_charted_of_a_canal_is_told_though_no_length_moved(
    priya: Person, approved: ToothPlanVersion, asked: Asked
) -> None:
    wall = WallInput(thickness_mm=0.9, from_end_mm=3.0)
    charted = {"curvature_deg": 24.0, "wall": wall, "first_binder_size": 20}
    canals.change_canal(actor=priya, canal=canal_of(approved.case, "P"), changes=charted)
    second, _ = plans.propose(actor=priya, case=approved.case, asked=asked)
    changes = plan_queries.changes(second, None)
    assert changes is not None
    assert not changes.nothing
    facts = {(c.label, c.before, c.after, c.unit) for canal in changes.canals for c in canal.changes if c.path}
    assert facts == {
        ("curvature", None, "24", "°"),
        ("thinnest wall", None, "thickness 0.9 mm, from the end 3 mm", ""),
        ("first hand size to bind after coronal flaring", None, "20", ""),
    }


def test_the_most_dangerous_change_comes_first(priya: Person, approved: ToothPlanVersion, asked: Asked) -> None:
    canals.change_canal(actor=priya, canal=canal_of(approved.case, "P"), changes={"curvature_deg": 24.0})
    reading = ConfirmingImage(set_mm=18.0, tip_short_mm=0.0, reference_point="DB cusp")
    readings.take_length(actor=priya, canal=canal_of(approved.case, "DB"), reading=reading)
    second, _ = plans.propose(actor=priya, case=approved.case, asked=asked)
    changes = plan_queries.changes(second, None)
    assert changes is not None
    assert [canal.canal for canal in changes.canals] == ["DB", "P"]
    bears_on = [change.bears_on for change in changes.canals[0].changes]
    assert bears_on == sorted(bears_on, key=list(Bears).index)
    taken = next(change for change in changes.canals[0].changes if change.subject == "confirming image 3")
    assert (taken.label, taken.before) == ("reading", None)
    assert taken.after == "stop that was set 18 mm, tip short of the apex 0 mm, reference point DB cusp"


def test_every_move_is_logged_with_who_and_what(approved: ToothPlanVersion, priya: Person, vale: Person) -> None:
    lines = ChangeLog.objects.filter(case=approved.case, subject="ToothPlanVersion").order_by("id")
    assert [(line.verb, line.actor_id) for line in lines] == [
        ("propose", priya.pk),
        ("submit", priya.pk),
        ("approve", vale.pk),
    ]
