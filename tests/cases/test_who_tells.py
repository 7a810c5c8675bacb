"""Who may tell which event, per role and per standing towards the case, through the real API.

`tests/shared/who-tells.json` was written by hand from the decision on who works a case; server and phone answer to it.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from cases.domain.access.roles import Role
from cases.domain.access.who_tells import part_of
from cases.domain.events.kinds import EventKind
from cases.domain.events.registry import EVENTS, MAY_TELL, OF_WORK, Part, Undo
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.uuid7 import uuid7
from cases.models import Image, Membership, Person, ToothPlanVersion, TreatmentEvent
from cases.services.charting import readings
from planning.lengths.readings import ConfirmingImage
from tests.api.test_cases_images import PNG, put
from tests.api.test_cases_treatment import REACHED, at, event, report
from tests.cast import API, canal_of, client, problem

FOLDER = Path(__file__).parents[1] / "shared"
SHARED = json.loads((FOLDER / "who-tells.json").read_text(encoding="utf-8"))
TAKEN_BACK = json.loads((FOLDER / "taken-back.json").read_text(encoding="utf-8"))
TOOK_OVER = {"kind": "take_over"}
GAVE_BACK = {"kind": "give_back"}

BODIES: dict[EventKind, dict[str, Any]] = {
    EventKind.STEP: REACHED | {"depth_um": 18_000},
    EventKind.ANSWER: {"asks": str(uuid7()), "cause": "not_known"},
    EventKind.READING: {
        "taken": {"method": "confirming_image", "reference_point": "DB cusp tip", "set_mm": 18, "tip_short_mm": 0}
    },
    EventKind.SIGN_OFF: {"exit": "approved"},
    EventKind.INSPECTED: {"instrument": "10/.02", "found": "whole"},
    EventKind.TURN: {},
    EventKind.PAUSE: {"what": "other"},
    EventKind.EMERGENCY: {"what": "sudden_bleeding"},
    EventKind.CORRECTED: {"corrects": str(uuid7()), "what": "collapse"},
    EventKind.RESUME: {"reason": "Looked at."},
    EventKind.CLOSE: {"access_sealed": True},
    EventKind.REOPEN: {"as_left": ["DB"]},
    EventKind.REPLAN: {"replaces": "0" * 64},
    EventKind.REVOKED: {"reason": "Of another tooth."},
    EventKind.RELEASE: {"not_released": []},
    EventKind.STRUCK: {"what": "length", "struck": str(uuid7()), "why": "mistyped"},
    EventKind.ASK: {"note": ""},
    EventKind.COME: {"note": ""},
    EventKind.WANTED: {"what": "image"},
    EventKind.TAKE_OVER: {},
    EventKind.GIVE_BACK: {},
    EventKind.ON_SITE: {},
    EventKind.DAM: {"state": "on"},
    EventKind.IMAGE: {"image_id": str(uuid7())},
    EventKind.IRRIGATED: {"irrigant": "saline", "volume_ml": 2},
    EventKind.NOTE: {"text": "Seen."},
    EventKind.UNDO: {"undoes": str(uuid7())},
}

_WHO = {
    Part.OWN_STUDENT: "priya",
    Part.OTHER_STUDENT: "tom",
    Part.LOOKING_IN: "vale",
    Part.TOOK_OVER: "vale",
    Part.COORDINATOR: "rosa",
    Part.STRANGER: "stranger",
}
_CHANGE_PART = {EventKind.TAKE_OVER, EventKind.GIVE_BACK}
_UNSEEN = {Part.OTHER_STUDENT, Part.STRANGER}


@pytest.fixture
def everybody(priya: Person, tom: Person, vale: Person, rosa: Person, stranger: Person) -> dict[str, Person]:
    return {"priya": priya, "tom": tom, "vale": vale, "rosa": rosa, "stranger": stranger}


def test_server_and_phone_answer_to_one_table() -> None:
    """Nothing derived: a kind that is not listed fails here, on both sides."""
    assert {kind.value: sorted(parts) for kind, parts in MAY_TELL.items()} == {
        kind: sorted(parts) for kind, parts in SHARED.items()
    }
    assert set(SHARED) == set(EventKind)


def test_server_and_phone_take_back_by_one_table() -> None:
    """By how it is taken back; written by hand too."""
    assert {undo: set(kinds) for undo, kinds in TAKEN_BACK.items()} == {
        undo.value: {kind.value for kind, rules in EVENTS.items() if rules.undo is undo} for undo in Undo
    }


@pytest.mark.parametrize("part", Part)
def test_the_matrix(part: Part, everybody: dict[str, Person], approved: ToothPlanVersion) -> None:
    who, device = everybody[_WHO[part]], str(uuid7())
    seq = 0
    if part is Part.TOOK_OVER:
        seq = 1
        report(who, approved.case, device, event(approved, seq, TOOK_OVER, canal=""))
    # What would change the part comes last.
    kinds = sorted(EventKind, key=[*set(EventKind) - _CHANGE_PART, EventKind.TAKE_OVER, EventKind.GIVE_BACK].index)
    expected, came = {}, {}
    for kind in kinds:
        body = {"kind": kind.value, **BODIES[kind]}
        if kind is EventKind.ON_SITE:
            body["supervisor_id"] = str(everybody["vale"].pk)
        sent = event(approved, seq + 1, body, node="explore/10-02")
        answer = report(who, approved.case, device, sent)
        stored = TreatmentEvent.objects.filter(pk=sent["id"]).exists()
        seq += stored
        came[kind.value] = (answer.status_code, stored)
        expected[kind.value] = (
            (404, False) if part in _UNSEEN else (200, True) if part.value in SHARED[kind] else (403, False)
        )
        if answer.status_code == 403:
            assert problem(answer, 403, "not-allowed")["#/events/0/payload/kind"]
        if part is Part.LOOKING_IN and kind is EventKind.TAKE_OVER:
            report(who, approved.case, device, event(approved, seq + 1, GAVE_BACK, canal=""))
            seq += 1
    assert came == expected


@pytest.mark.parametrize("role", Role)
def test_a_member_of_any_role_has_a_part(role: Role) -> None:
    parts = {part_of(role, own=own, took_over=took) for own in (True, False) for took in (True, False)}
    assert parts <= set(Part) - {Part.STRANGER}
    assert Part.TOOK_OVER not in parts or role is Role.SUPERVISOR


def test_who_looks_in_is_told_what_to_do(vale: Person, approved: ToothPlanVersion) -> None:
    answer = report(vale, approved.case, str(uuid7()), event(approved, 1, REACHED, node="explore/10-02"))
    assert "I take over" in problem(answer, 403, "not-allowed")["#/events/0/payload/kind"]


def test_who_takes_over_works_until_it_is_given_back(vale: Person, approved: ToothPlanVersion) -> None:
    laptop = str(uuid7())
    took = event(approved, 1, TOOK_OVER, canal="")
    step = event(approved, 2, REACHED | {"depth_um": 18_000}, node="explore/10-02")
    treatment = report(vale, approved.case, laptop, took, step).json()
    assert treatment["course"]["taken_over"] == str(vale.pk)
    assert treatment["course"]["out_of_course"] == {}
    treatment = report(vale, approved.case, laptop, event(approved, 3, GAVE_BACK, canal="")).json()
    assert treatment["course"]["taken_over"] == ""
    assert report(vale, approved.case, laptop, event(approved, 4, REACHED)).status_code == 403


def test_the_list_of_running_work_names_who_took_over_until_it_is_given_back(
    priya: Person, vale: Person, amari: Person, approved: ToothPlanVersion
) -> None:
    case = approved.case

    def named() -> str | None:
        page = client(amari).get(f"{API}/programmes/{case.programme_id}/running-work").json()
        (row,) = page["results"]
        return row["taken_over"] and str(row["taken_over"]["name"])

    report(priya, case, str(uuid7()), event(approved, 1, {"kind": "turn"}))
    assert named() is None
    laptop = str(uuid7())
    report(vale, case, laptop, event(approved, 1, TOOK_OVER, canal=""))
    assert named() == "Vale"
    report(amari, case, str(uuid7()), event(approved, 1, TOOK_OVER, canal=""))
    assert named() == "Amari"
    report(amari, case, str(uuid7()), event(approved, 1, {"kind": "give_back"}, canal=""))
    assert named() is None


def test_what_was_done_before_another_took_over_is_kept_out_of_course(
    vale: Person, amari: Person, approved: ToothPlanVersion
) -> None:
    """The line was down: a clinical fact of somebody who worked the case is never refused."""
    laptop, tablet = str(uuid7()), str(uuid7())
    report(vale, approved.case, laptop, event(approved, 1, TOOK_OVER, canal=""))
    treatment = report(amari, approved.case, tablet, event(approved, 1, TOOK_OVER, canal="")).json()
    assert treatment["course"]["taken_over"] == str(amari.pk)
    late = event(approved, 2, REACHED | {"depth_um": 18_000}, node="explore/10-02")
    treatment = report(vale, approved.case, laptop, late).json()
    assert treatment["course"]["out_of_course"] == {late["id"]: OutOfCourse.NOT_WORKING.value}


def test_the_student_is_never_shut_out(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    report(vale, approved.case, str(uuid7()), event(approved, 1, TOOK_OVER, canal=""))
    mine = event(approved, 1, REACHED | {"depth_um": 18_000}, node="explore/10-02")
    assert report(priya, approved.case, str(uuid7()), mine).json()["course"]["out_of_course"] == {}


def test_closing_the_visit_ends_it(priya: Person, vale: Person, approved: ToothPlanVersion) -> None:
    report(vale, approved.case, str(uuid7()), event(approved, 1, TOOK_OVER, canal=""))
    close = event(approved, 1, {"kind": "close", "access_sealed": True}, canal="")
    assert report(priya, approved.case, str(uuid7()), close).json()["course"]["taken_over"] == ""


def test_lengths_and_junctions_too_are_taken_by_who_works_the_case(vale: Person, approved: ToothPlanVersion) -> None:
    canal = canal_of(approved.case, "MB2")
    length = {"reading": {**BODIES[EventKind.READING]["taken"], "reference_point": canal.reference_point}}
    junction = {"junction": {"method": "cone_mark", "from_terminus_mm": 3}}
    ways = (("readings", length), ("junctions", junction))
    for path, body in ways:
        answer = client(vale).post(f"{API}/canals/{canal.pk}/{path}", body, format="json")
        assert "I take over" in answer.json()["detail"]
        assert answer.status_code == 403
    report(vale, approved.case, str(uuid7()), event(approved, 1, TOOK_OVER, canal=""))
    for path, body in ways:
        assert client(vale).post(f"{API}/canals/{canal.pk}/{path}", body, format="json").status_code == 201


def test_a_length_told_at_the_chair_after_a_take_over_ended_is_a_length_all_the_same(
    priya: Person, vale: Person, approved: ToothPlanVersion
) -> None:
    laptop = str(uuid7())
    report(vale, approved.case, laptop, event(approved, 1, TOOK_OVER, canal=""))
    report(priya, approved.case, str(uuid7()), event(approved, 1, {"kind": "close", "access_sealed": True}, canal=""))
    late = event(approved, 2, {"kind": "reading", **BODIES[EventKind.READING]})
    treatment = report(vale, approved.case, laptop, late).json()
    assert treatment["course"]["out_of_course"] == {late["id"]: OutOfCourse.NOT_WORKING.value}
    assert canal_of(approved.case, "DB").readings.filter(actor=vale).exists()
    image = ConfirmingImage(reference_point="DB cusp tip", set_mm=18, tip_short_mm=0)
    with pytest.raises(Exception, match="I take over"):
        readings.take_length(actor=vale, canal=canal_of(approved.case, "DB"), reading=image)


def test_work_whose_take_over_is_missing_is_asked_for_from_there_on(vale: Person, approved: ToothPlanVersion) -> None:
    """As after a copy was brought back: a refusal would set aside for good what the missing word explains."""
    laptop = str(uuid7())
    taken, done = event(approved, 1, TOOK_OVER, canal=""), event(approved, 2, REACHED | {"depth_um": 18_000})
    answer = report(vale, approved.case, laptop, done)
    problem(answer, 409, "sequence-gap")
    assert report(vale, approved.case, laptop, taken, done).status_code == 200


def test_an_image_comes_from_who_works_or_worked_the_case(vale: Person, approved: ToothPlanVersion) -> None:
    """It has a way of its own and may come long after."""
    assert put(vale, approved.case, uuid7(), PNG).status_code == 403
    laptop = str(uuid7())
    taken = (event(approved, 1, TOOK_OVER, canal=""), event(approved, 2, GAVE_BACK, canal=""))
    report(vale, approved.case, laptop, *taken)
    assert put(vale, approved.case, uuid7(), PNG).status_code == 201
    assert Image.objects.filter(case=approved.case, taken_by=vale).exists()


def test_a_coordinator_sees_the_chair(rosa: Person, approved: ToothPlanVersion) -> None:
    assert Membership.objects.get(person=rosa).role == Role.COORDINATOR
    assert client(rosa).get(at(approved.case)).status_code == 200


def test_only_work_is_kept_to_who_works() -> None:
    """Deciding, asking and stopping stay open to every supervisor of the programme, whoever works."""
    assert not OF_WORK & {EventKind.SIGN_OFF, EventKind.RESUME, EventKind.PAUSE, EventKind.EMERGENCY, EventKind.NOTE}
