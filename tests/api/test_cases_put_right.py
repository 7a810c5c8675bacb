"""An image in the wrong canal is struck or put to the right one, and what rested on it is computed anew."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from cases.domain.uuid7 import uuid7
from cases.exports.record_pdf import record_pdf
from cases.mapping.charts import facts_of
from cases.models import Case, ChangeLog, Image, LengthReading, Person, ToothPlanVersion
from cases.queries.record import record_of
from cases.services.charting import canals
from tests.api.test_cases_bends_in_space import FIRST, SECOND, combine, listed, marked
from tests.api.test_cases_images import at, put
from tests.api.test_cases_markings import DRAWN, ROOT, mark, marks, sent
from tests.api.test_cases_treatment import (
    APPROVED,
    DONE,
    LAPTOP,
    PHONE,
    REACHED,
    canal,
    event,
    report,
    running,
)
from tests.api.test_cases_treatment import at as chair
from tests.cases.pictures import picture
from tests.cast import canal_of, client, problem
from tests.radiographs import Root, drawn

WRONG = {"why": "wrong_canal"}


@pytest.fixture(autouse=True)
def empty_storage(settings: Any) -> None:
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": "django.core.files.storage.InMemoryStorage"}}


@pytest.fixture
def image(priya: Person, opened: Case, tmp_path: Path) -> Image:
    """A drawn radiograph of P, of which a length and the bend were taken."""
    canals.change_canal(actor=priya, canal=canal_of(opened, "P"), changes={"reference_point": "palatal cusp"})
    row = sent(priya, opened, DRAWN.png(tmp_path / "drawn.png").read_bytes())
    assert mark(priya, row, {"marks": marks(), "take": ["P"]}).status_code == 201
    return row


def stored(person: Person, case: Case, canal: str = "DB") -> str:
    id_ = str(uuid7())
    assert put(person, case, id_, picture(), f"?canal={canal}&purpose=length").status_code == 201
    return id_


def strike(person: Person | None, case: Case, id_: object, body: Any = WRONG) -> Any:
    return client(person).post(at(case, id_, "/strike"), body, format="json")


def move(person: Person | None, case: Case, id_: object, to: Any) -> Any:
    return client(person).post(at(case, id_, "/move"), {"canal": to}, format="json")


def facts(case: Case) -> tuple[Any, ...]:
    row = facts_of(canal_of(case, "P"))
    return (row.curvature_deg, row.curve_start_mm, row.orifice_mm, row.curve_radius_mm, row.curve_from_end_mm)


# --- struck ---


def test_it_stays_with_who_when_and_why(priya: Person, vale: Person, opened: Case) -> None:
    id_ = stored(priya, opened)
    image_ = strike(vale, opened, id_).json()
    (correction,) = image_["put_right"]
    assert (
        image_["struck"],
        correction["by"]["name"],
        correction["why"],
        correction["struck"],
        correction["canal"],
    ) == (
        True,
        "Vale",
        "wrong_canal",
        True,
        "DB",
    )
    assert client(priya).get(at(opened, id_, "/content")).status_code == 200
    assert client(priya).get(at(opened)).json()["images"] == [image_]
    # The first who struck it stays, and its bytes sent again bring it back to nothing.
    assert strike(priya, opened, id_, {"why": "not_so"}).json() == image_
    assert put(priya, opened, id_, picture(), "?canal=DB&purpose=length").json()["struck"] is True
    assert ChangeLog.objects.filter(verb="strike", subject_id=id_).count() == 1


def test_a_length_taken_from_it_counts_no_more_and_the_bend_is_unknown(
    priya: Person, vale: Person, opened: Case, image: Image
) -> None:
    assert all(fact is not None for fact in facts(opened))
    revision = Case.objects.get(pk=opened.pk).revision
    strike(vale, opened, image.pk)
    reading = LengthReading.objects.get(canal=canal_of(opened, "P"))
    assert (reading.struck_by, reading.struck_why) == (vale, "wrong_canal")
    assert facts(opened) == (None,) * 5
    assert Case.objects.get(pk=opened.pk).revision > revision


def test_what_another_image_says_takes_its_place(priya: Person, opened: Case, image: Image, tmp_path: Path) -> None:
    """Drawn 13 mm straight and 40 degrees of a circle: 20 by Schneider; the other 50 degrees, 25."""
    other = Root(canal="P", begins=(9, 3), straight_mm=13, radius_mm=8, bend_deg=50, instrument_mm=18)
    second = sent(priya, opened, drawn(other).png(tmp_path / "other.png").read_bytes())
    assert mark(priya, second, {"marks": marks(drawn(other), other), "take": ["P"]}).status_code == 201
    assert facts_of(canal_of(opened, "P")).curvature_deg == pytest.approx(25, abs=1)
    strike(priya, opened, second.pk)
    assert facts_of(canal_of(opened, "P")).curvature_deg == pytest.approx(20, abs=1)
    counting = LengthReading.objects.filter(canal=canal_of(opened, "P"), struck_at=None)
    assert [row.marking and row.marking.image for row in counting] == [image]


def test_what_somebody_charted_otherwise_since_stays(priya: Person, opened: Case, image: Image) -> None:
    canals.change_canal(actor=priya, canal=canal_of(opened, "P"), changes={"curvature_deg": 33.0})
    strike(priya, opened, image.pk)
    assert facts(opened) == (33.0, None, None, None, None)


def test_a_bend_in_space_of_it_counts_no_more(priya: Person, opened: Case, tmp_path: Path) -> None:
    canals.change_canal(actor=priya, canal=canal_of(opened, "P"), changes={"reference_point": "palatal cusp"})
    views = [marked(priya, opened, tmp_path, root) for root in (FIRST, SECOND)]
    combine(priya, opened, views)
    (before,) = listed(priya, opened)
    assert facts_of(canal_of(opened, "P")).curvature_deg is not None
    strike(priya, opened, before["second_image_id"])
    (after,) = listed(priya, opened)
    assert (after["outdated"], facts_of(canal_of(opened, "P")).curvature_deg) == (True, None)
    problem(combine(priya, opened, views), 422, "not-usable")


def test_no_length_is_taken_from_it_any_more(priya: Person, opened: Case, image: Image) -> None:
    strike(priya, opened, image.pk)
    answer = mark(priya, image, {"marks": marks(), "take": ["P"]})
    assert "#/take/0" in problem(answer, 422, "not-usable")
    assert mark(priya, image, {"marks": marks()}).status_code == 201


# --- put to another canal ---


def test_it_is_put_where_it_belongs_and_where_it_was_stays_listed(priya: Person, vale: Person, opened: Case) -> None:
    id_ = stored(priya, opened)
    image_ = move(vale, opened, id_, "P").json()
    assert (image_["canal"], image_["struck"]) == ("P", False)
    assert move(vale, opened, id_, "P").json() == image_
    image_ = move(priya, opened, id_, "").json()
    assert [
        (correction["by"]["name"], correction["canal"], correction["moved_to"]) for correction in image_["put_right"]
    ] == [
        ("Vale", "DB", "P"),
        ("Priya", "P", ""),
    ]
    assert "#/canal" in problem(move(priya, opened, id_, "MB9"), 422, "not-usable")
    strike(priya, opened, id_)
    problem(move(priya, opened, id_, "DB"), 422, "not-usable")


def test_what_was_taken_for_the_canal_where_it_was_counts_no_more(priya: Person, opened: Case, image: Image) -> None:
    move(priya, opened, image.pk, "DB")
    reading = LengthReading.objects.get(canal=canal_of(opened, "P"))
    assert (reading.struck_why, facts(opened)) == ("wrong_canal", (None,) * 5)


def test_what_was_taken_for_another_canal_stays(priya: Person, opened: Case, image: Image) -> None:
    """It was put to DB by mistake, P was marked on it, and it is put to P."""
    Image.objects.filter(pk=image.pk).update(canal="DB")
    before = facts(opened)
    move(priya, opened, image.pk, "P")
    assert LengthReading.objects.get(canal=canal_of(opened, "P")).struck_at is None
    assert facts(opened) == before


def test_who_may(priya: Person, tom: Person, vale: Person, rosa: Person, stranger: Person, opened: Case) -> None:
    id_ = stored(priya, opened)
    for ask, what in ((strike, WRONG), (move, "P")):
        assert ask(None, opened, id_, what).status_code == 401
        assert {ask(outside, opened, id_, what).status_code for outside in (tom, stranger)} == {404}
        problem(ask(rosa, opened, id_, what), 403, "not-allowed")
    assert "#/why" in problem(strike(priya, opened, id_, {"why": "mistyped"}), 400, "not-understood")


def test_the_list_has_a_tag_that_changes_with_what_it_says(priya: Person, opened: Case) -> None:
    """RFC 9110, 13.1.2: 304 where nothing has changed."""
    id_ = stored(priya, opened)
    first = client(priya).get(at(opened))
    again = client(priya).get(at(opened), headers={"If-None-Match": first["ETag"]})
    assert (again.status_code, again.content) == (304, b"")
    tags = [first["ETag"]]
    for change in (
        lambda: stored(priya, opened),
        lambda: move(priya, opened, id_, "P"),
        lambda: strike(priya, opened, id_),
    ):
        change()
        answer = client(priya).get(at(opened), headers={"If-None-Match": tags[-1]})
        assert answer.status_code == 200
        tags.append(answer["ETag"])
    assert len(set(tags)) == len(tags)


# --- at the chair, and in the record ---


@pytest.fixture
def at_the_hold_point(priya: Person, approved: ToothPlanVersion) -> str:
    """DB waits for the sign-off on its length; the image's id."""
    id_ = stored(priya, approved.case)
    report(
        priya,
        approved.case,
        PHONE,
        event(approved, 1, REACHED | {"depth_um": 18_000, "stop_um": 18_000}, node="explore/10-02"),
        event(approved, 2, DONE, node="explore/10-02/irrigate"),
        event(approved, 3, {"kind": "image", "image_id": id_, "purpose": "length"}, node="length/image"),
        event(approved, 4, DONE | {"image_id": id_}, node="length/image"),
    )
    return id_


def lacks(person: Person, case: Case) -> list[str]:
    lacking: list[str] = canal(client(person).get(chair(case)).json())["lacking"]
    return lacking


def test_the_hold_point_lacks_its_image_again(
    priya: Person, vale: Person, approved: ToothPlanVersion, at_the_hold_point: str
) -> None:
    assert lacks(priya, approved.case) == []
    strike(vale, approved.case, at_the_hold_point)
    treatment = client(priya).get(chair(approved.case)).json()
    assert (canal(treatment)["lacking"], canal(treatment)["state"]) == (["image"], "hold_point")
    entry = treatment["events"][-1]
    assert (entry["payload"]["what"], entry["actor"]["name"], entry["canal"]) == ("image", "Vale", "DB")


def test_moved_away_and_back(priya: Person, approved: ToothPlanVersion, at_the_hold_point: str) -> None:
    move(priya, approved.case, at_the_hold_point, "P")
    assert lacks(priya, approved.case) == ["image"]
    move(priya, approved.case, at_the_hold_point, "DB")
    assert lacks(priya, approved.case) == []


def test_a_sign_off_that_rested_on_it_is_asked_for_again_while_nothing_has_gone_on_from_it(
    priya: Person, vale: Person, approved: ToothPlanVersion, at_the_hold_point: str
) -> None:
    case = approved.case
    report(vale, case, LAPTOP, event(approved, 1, APPROVED, node="length/sign-off"))
    assert canal(running(vale, case)[0])["state"] == "open"
    strike(vale, case, at_the_hold_point)
    assert canal(running(vale, case)[0])["state"] == "hold_point"
    assert running(vale, case)[0]["waiting_s"] is not None
    treatment = client(priya).get(chair(case)).json()
    assert (canal(treatment)["state"], canal(treatment)["lacking"]) == ("hold_point", ["image"])
    # Another image, the sign-off once more, and a step: from there on it stays, and is marked.
    other = stored(priya, case)
    image_again = event(approved, 5, {"kind": "image", "image_id": other, "purpose": "length"}, node="length/image")
    report(priya, case, PHONE, image_again)
    report(vale, case, LAPTOP, event(approved, 2, APPROVED, node="length/sign-off"))
    report(priya, case, PHONE, event(approved, 6, REACHED, node="glide-path/10-02"))
    strike(vale, case, other)
    assert canal(running(vale, case)[0])["state"] == "open"
    assert [sign_off.image_gone for sign_off in record_of(case.pk).record.sign_offs] == [True, True]


def test_the_record_says_so_on_the_sign_off_that_rested_on_it(
    priya: Person, vale: Person, approved: ToothPlanVersion, at_the_hold_point: str
) -> None:
    case = approved.case
    report(vale, case, LAPTOP, event(approved, 1, APPROVED, node="length/sign-off"))
    assert [sign_off.image_gone for sign_off in record_of(case.pk).record.sign_offs] == [False]
    move(vale, case, at_the_hold_point, "P")
    strike(vale, case, at_the_hold_point, {"why": "not_so"})
    shown = record_of(case.pk)
    assert [
        (correction.canal, correction.moved_to, correction.who.name) for correction in shown.record.images_put_right
    ] == [
        ("DB", "P", "Vale"),
        ("P", None, "Vale"),
    ]
    assert [sign_off.image_gone for sign_off in shown.record.sign_offs] == [True]
    assert [image_.counts for image_ in shown.record.images] == [False]
    pages = PdfReader(BytesIO(record_pdf(shown.record, shown.hash))).pages
    paper = " ".join(" ".join(page.extract_text().split()) for page in pages)
    for says in ("Images that were put right", "struck, it does not show what it was taken for", "PUT RIGHT SINCE"):
        assert says in paper
    record = client(priya).get(f"/api/v1/cases/{case.pk}/record").json()["record"]
    assert [entry["says"] for entry in record["timeline"]][-2:] == [
        "Image put to P, where it belongs",
        "Image struck, it does not show what it was taken for",
    ]


def test_the_length_taken_from_it_withholds_its_canal(
    priya: Person, approved: ToothPlanVersion, tmp_path: Path
) -> None:
    """The image alone withholds nothing; a length that was taken from it does, as any struck reading does."""
    case = approved.case
    point = canal_of(case, "P").reference_point
    row = sent(priya, case, DRAWN.png(tmp_path / "drawn.png").read_bytes())
    body = marks()
    body["lines"][0]["reference_point"] = point
    assert mark(priya, row, {"marks": body, "take": [ROOT.canal]}).status_code == 201
    report(priya, case, PHONE, event(approved, 1, {"kind": "turn"}))
    strike(priya, case, row.pk)
    treatment = client(priya).get(chair(case)).json()
    assert (canal(treatment, "P")["state"], canal(treatment)["state"]) == ("to_plan", "open")
    assert [event_["payload"]["what"] for event_ in treatment["events"][-2:]] == ["image", "length"]
