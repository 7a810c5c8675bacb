"""Markings over the API: a drawn radiograph is marked, lengths are taken from it, a supervisor puts one right."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pydicom
import pytest

from cases.domain.uuid7 import uuid7
from cases.mapping.charts import facts_of
from cases.models import Case, Image, LengthReading, Marking, Person
from cases.services.charting import canals
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from tests.api.test_cases_images import at, digest, put
from tests.cases.pictures import picture, written
from tests.cast import canal_of, client, problem
from tests.radiographs import Places, Radiograph, Root, drawn

ROOT = Root(canal="P", begins=(6, 3), straight_mm=13, radius_mm=9, bend_deg=40, instrument_mm=18)
DRAWN = drawn(ROOT)


@pytest.fixture(autouse=True)
def empty_storage(settings: Any) -> None:
    settings.STORAGES = {**settings.STORAGES, "images": {"BACKEND": "django.core.files.storage.InMemoryStorage"}}


@pytest.fixture
def image(priya: Person, opened: Case, tmp_path: Path) -> Image:
    """The drawn radiograph as a picture of a camera's kind: without a scale."""
    canals.change_canal(actor=priya, canal=canal_of(opened, "P"), changes={"reference_point": "palatal cusp"})
    return sent(priya, opened, DRAWN.png(tmp_path / "drawn.png").read_bytes())


def sent(person: Person, case: Case, data: bytes) -> Image:
    id_ = uuid7()
    assert put(person, case, id_, data, "?canal=P&purpose=pre_operative").status_code == 201
    return Image.objects.get(pk=id_)


def pixels(of: Radiograph, places_mm: Places) -> list[dict[str, float]]:
    return [{"x_px": round(x, 1), "y_px": round(y, 1)} for x, y in of.on_image(places_mm)]


def marks(of: Radiograph = DRAWN, root: Root = ROOT, **more: Any) -> dict[str, Any]:
    """Marks where the canal was drawn, and along the instrument that stands in it."""
    along = np.array([0, 4, root.straight_mm, *np.linspace(root.straight_mm, root.length_mm, 5)[1:]])
    line = {
        "canal": root.canal,
        "points": pixels(of, root.along(along)),
        "orifice": 1,
        "leaves": 2,
        "reference_point": "palatal cusp",
    }
    points = pixels(of, root.along(np.linspace(0, root.instrument_mm or 0, 6)))
    return {"lines": [line], "known": {"what": "instrument", "length_mm": root.instrument_mm, "points": points}} | more


def mark(person: Person | None, image: Image, body: dict[str, Any], id_: object = None) -> Any:
    where = at(image.case, image.pk, f"/markings/{id_ or uuid7()}")
    return client(person).put(where, body, format="json")


def test_a_length_is_taken_from_an_image(priya: Person, opened: Case, image: Image) -> None:
    """Drawn 13 mm straight and 40 degrees of a circle of radius 9: 19.283 mm, 20 degrees by Schneider."""
    answer = mark(priya, image, {"marks": marks(), "take": ["P"]})
    assert answer.status_code == 201
    line = answer.json()["measured"]["lines"][0]
    assert line["length_mm"]["value"] == pytest.approx(ROOT.length_mm, abs=0.1)
    assert answer.json()["readings"] == ["P"]
    reading = LengthReading.objects.get(canal=canal_of(opened, "P"))
    assert reading.payload["tooth_mm"] == pytest.approx(ROOT.length_mm, abs=0.1)
    assert str(reading.marking_id) == answer.json()["id"]
    charted = facts_of(canal_of(opened, "P"))
    assert charted.curvature_deg == pytest.approx(20, abs=1)
    assert charted.orifice_mm == pytest.approx(4, abs=0.1)
    assert charted.curve_start_mm == pytest.approx(13, abs=0.1)
    assert charted.curve_radius_mm == pytest.approx(9, abs=0.4)


def s_shaped(step_mm: float) -> dict[str, Any]:
    """8 mm straight, 6 mm over 50° to the right, 9 mm over 70° to the left, touched where a pixel is shown two wide."""
    places = [(3.0, 1.0), (3.0, 5.0)]
    turned = math.radians(50)
    ends = 6 * turned, 6 * turned + 9 * math.radians(70)
    for along in np.linspace(0, ends[1], round(ends[1] / step_mm) + 1):
        turn, back = min(along, ends[0]) / 6, max(0.0, along - ends[0]) / 9
        x, y = 6 * (1 - math.cos(turn)), 9 + 6 * math.sin(turn)
        x += 9 * (math.cos(turned - back) - math.cos(turned))
        y += 9 * (math.sin(turned) - math.sin(turned - back))
        places.append((3 + x, y))
    zoom = {"screen_px_per_px": 2}
    points = [point | zoom for point in pixels(DRAWN, np.array(places))]
    known = {"what": "ruler", "length_mm": 15, "points": pixels(DRAWN, np.array([[1, 1], [1, 16]]))}
    line = {"canal": "P", "points": points, "orifice": 1, "leaves": 2, "reference_point": "palatal cusp"}
    return {"lines": [line], "known": known}


def test_of_a_double_bend_the_tightest_is_charted(priya: Person, opened: Case, image: Image) -> None:
    """By construction: radius 6, and Schneider's 35°, half of the other's 70; the S as a whole turns by less."""
    bend = mark(priya, image, {"marks": s_shaped(0.8), "take": ["P"]}).json()["measured"]["lines"][0]["bend"]
    assert (bend["shape"], len(bend["bends"])) == ("double", 2)
    assert bend["schneider_deg"]["value"] < 20
    charted = facts_of(canal_of(opened, "P"))
    assert charted.curve_radius_mm == pytest.approx(6, abs=0.6)
    assert charted.curvature_deg == pytest.approx(35, abs=3)


def test_one_that_cannot_be_told_apart_takes_a_radius_of_before_away(priya: Person, opened: Case, image: Image) -> None:
    mark(priya, image, {"marks": marks(), "take": ["P"]})
    assert facts_of(canal_of(opened, "P")).curve_radius_mm
    answer = mark(priya, image, {"marks": far(s_shaped(1.5)), "take": ["P"]})
    assert answer.json()["measured"]["lines"][0]["bend"]["shape"] == "unclear"
    charted = facts_of(canal_of(opened, "P"))
    assert (charted.curve_radius_mm, charted.curve_from_end_mm) == (None, None)


def far(marks: dict[str, Any]) -> dict[str, Any]:
    """The same marks, touched where a pixel was shown so small that they do not tell one bend from the other."""
    points = [point | {"screen_px_per_px": 0.06} for point in marks["lines"][0]["points"]]
    return marks | {"lines": [marks["lines"][0] | {"points": points}]}


@pytest.mark.parametrize(
    ("seen", "code"), [(s_shaped(0.8), "bend-double"), (far(s_shaped(1.5)), "bend-unclear")], ids=["double", "unclear"]
)
def test_a_plan_says_that_a_marked_canal_bends_both_ways_while_its_image_counts(
    priya: Person, vale: Person, opened: Case, image: Image, asked: Asked, seen: dict[str, Any], code: str
) -> None:
    def bends() -> list[tuple[str | None, str]]:
        cautions = plans.preview(actor=priya, case=opened, asked=asked).plan.cautions
        return [(caution.canal, caution.code) for caution in cautions if caution.code.startswith("bend-")]

    mark(priya, image, {"marks": marks(), "take": ["P"]})
    assert bends() == []
    mark(priya, image, {"marks": seen, "take": ["P"]})
    assert bends() == [("P", code)]
    client(vale).post(at(opened, image.pk, "/strike"), {"why": "wrong_canal"}, format="json")
    assert bends() == []


@pytest.mark.parametrize("where", [{"x_px": -0.5, "y_px": 9}, {"x_px": 9, "y_px": 1e5}])
def test_a_mark_outside_the_image_is_refused(priya: Person, image: Image, where: dict[str, float]) -> None:
    outside = marks()
    outside["lines"][0]["points"][-1] = where
    assert "#/marks/lines/0/points/6" in problem(mark(priya, image, {"marks": outside}), 422, "not-usable")


def test_the_file_alone_gives_the_scale(priya: Person, opened: Case, tmp_path: Path) -> None:
    """Detector spacing and a magnification of 1.06 in an intra-oral file: estimated, and right."""
    canals.change_canal(actor=priya, canal=canal_of(opened, "P"), changes={"reference_point": "palatal cusp"})
    image = sent(priya, opened, DRAWN.dicom(tmp_path / "drawn.dcm").read_bytes())
    listed = client(priya).get(at(opened, image.pk, "/markings")).json()
    assert (listed["scale"]["state"], listed["scale"]["rests_on"], listed["markings"]) == (
        "estimated",
        "magnification",
        [],
    )
    image_marks = marks()
    del image_marks["known"]
    marking = mark(priya, image, {"marks": image_marks}).json()
    assert marking["measured"]["lines"][0]["length_mm"]["value"] == pytest.approx(ROOT.length_mm, abs=0.1)


def of_spacing(priya: Person, opened: Case, path: Path, at_detector_mm: float) -> Image:
    """The drawn image with no other spacing than this."""
    data_set = pydicom.dcmread(DRAWN.dicom(path))
    data_set.ImagerPixelSpacing = [at_detector_mm, at_detector_mm]
    del data_set.PixelSpacing
    return sent(priya, opened, written(data_set))


def test_a_spacing_that_cannot_be_is_said_and_a_known_object_helps(priya: Person, opened: Case, tmp_path: Path) -> None:
    """A hundred times too large: a slip of the decimal point."""
    image = of_spacing(priya, opened, tmp_path / "drawn.dcm", 2.0)
    listed = client(priya).get(at(opened, image.pk, "/markings")).json()
    assert (listed["scale"]["state"], listed["scale"]["rests_on"]) == ("uncalibrated", "refused")
    image_marks = marks()
    del image_marks["known"]
    assert "#/marks/facts/at_detector" in problem(mark(priya, image, {"marks": image_marks}), 422, "scale-not-usable")
    assert mark(priya, image, {"marks": marks()}).status_code == 201


def test_a_spacing_of_zero_was_not_said_and_a_known_object_helps(priya: Person, opened: Case, tmp_path: Path) -> None:
    """Devices write zero where they know nothing: there is nothing to refuse, and nothing to measure by."""
    image = of_spacing(priya, opened, tmp_path / "drawn.dcm", 0.0)
    listed = client(priya).get(at(opened, image.pk, "/markings")).json()
    assert (listed["scale"]["state"], listed["scale"]["rests_on"]) == ("uncalibrated", "nothing")
    image_marks = marks()
    del image_marks["known"]
    unscaled = mark(priya, image, {"marks": image_marks})
    assert unscaled.status_code == 201
    assert unscaled.json()["measured"]["lines"][0]["length_mm"] is None
    scaled = mark(priya, image, {"marks": marks()}).json()["measured"]["lines"][0]["length_mm"]
    assert scaled["least"] < ROOT.length_mm < scaled["most"]


def test_without_a_scale_marks_are_kept_and_no_length_is_taken(priya: Person, image: Image) -> None:
    image_marks = marks()
    del image_marks["known"]
    assert "#/take/0" in problem(mark(priya, image, {"marks": image_marks, "take": ["P"]}), 422, "not-usable")
    assert not Marking.objects.exists()
    marking = mark(priya, image, {"marks": image_marks}).json()
    assert marking["measured"]["lines"][0]["length_mm"] is None
    assert marking["measured"]["lines"][0]["bend"]["schneider_deg"]["value"] == pytest.approx(20, abs=1)


def test_a_supervisor_puts_a_length_right_and_both_stay(
    priya: Person, vale: Person, opened: Case, image: Image
) -> None:
    first = mark(priya, image, {"marks": marks(), "take": ["P"]}).json()
    longer = replace(ROOT, straight_mm=ROOT.straight_mm + 0.5)
    body = {"marks": marks(root=longer), "take": ["P"], "corrects_id": first["id"], "note": "The apex lies deeper."}
    body["marks"]["known"] = marks()["known"]
    second = mark(vale, image, body).json()
    listed = client(priya).get(at(opened, image.pk, "/markings")).json()["markings"]
    assert [(each["number"], each["made_by"]["name"], each["corrects_id"]) for each in listed] == [
        (1, priya.display_name, None),
        (2, vale.display_name, first["id"]),
    ]
    lengths = [each["measured"]["lines"][0]["length_mm"]["value"] for each in (first, second)]
    assert lengths[1] - lengths[0] == pytest.approx(0.5, abs=0.05)
    lengths_mm = [reading.payload["tooth_mm"] for reading in LengthReading.objects.order_by("number")]
    assert lengths_mm == [pytest.approx(lengths[0], abs=0.01), pytest.approx(lengths[1], abs=0.01)]


def test_a_supervisor_who_looks_in_measures_nothing_anew(vale: Person, image: Image) -> None:
    answer = mark(vale, image, {"marks": marks(), "take": ["P"]})
    assert "I take over" in answer.json()["detail"]
    assert answer.status_code == 403
    assert mark(vale, image, {"marks": marks()}).status_code == 201


def test_the_same_again_is_answered_the_same(priya: Person, image: Image) -> None:
    id_, body = uuid7(), {"marks": marks(), "take": ["P"]}
    first = mark(priya, image, body, id_)
    again = mark(priya, image, body, id_)
    assert (first.status_code, again.status_code, again.json()) == (201, 200, first.json())
    assert client(priya).get(at(image.case, image.pk, f"/markings/{id_}")).json() == first.json()
    assert LengthReading.objects.count() == 1
    problem(mark(priya, image, {**body, "take": []}, id_), 409, "id-used-differently")


def test_who_may(priya: Person, tom: Person, rosa: Person, stranger: Person, image: Image) -> None:
    body = {"marks": marks()}
    problem(mark(tom, image, body), 404, "not-found")
    problem(mark(stranger, image, body), 404, "not-found")
    problem(mark(rosa, image, body), 403, "not-allowed")
    problem(mark(None, image, body), 401, "not-authenticated")
    problem(client(stranger).get(at(image.case, image.pk, "/markings")), 404, "not-found")
    assert not Marking.objects.exists()


@pytest.mark.parametrize(
    ("change", "code", "pointer"),
    [
        ({"take": ["MB9"]}, "not-usable", "#/take/0"),
        ({"take": ["P", "P"]}, "not-usable", "#/take/1"),
        ({"corrects_id": str(uuid7())}, "not-usable", "#/corrects_id"),
        ({"marks": marks(facts={})}, "not-usable", "#/marks/facts"),
        ({"marks": marks(tapped_within_px=0)}, "scale-not-usable", "#/marks/tapped_within_px"),
        ({"marks": {"lines": [{"canal": "P", "points": []}]}}, "points-do-not-fit", "#/marks/lines/0/points"),
    ],
)
def test_what_cannot_be_is_refused(
    priya: Person, image: Image, change: dict[str, Any], code: str, pointer: str
) -> None:
    assert pointer in problem(mark(priya, image, {"marks": marks()} | change), 422, code)
    assert not Marking.objects.exists()


def test_a_canal_that_the_tooth_has_not_is_refused(priya: Person, image: Image) -> None:
    image_marks = marks(root=replace(ROOT, canal="MB9"))
    assert "#/take/0" in problem(mark(priya, image, {"marks": image_marks, "take": ["MB9"]}), 422, "no-such-canal")


def test_marks_come_after_their_image(priya: Person, opened: Case) -> None:
    id_, data = uuid7(), picture(60)
    headers = {"Upload-Offset": "0", "Upload-Length": str(len(data))}
    client(priya).patch(
        at(opened, id_),
        data[:10],
        content_type="application/partial-upload",
        headers={"Repr-Digest": digest(data), **headers},
    )
    problem(mark(priya, Image.objects.get(pk=id_), {"marks": marks()}), 422, "not-usable")


def test_a_marking_is_never_changed(priya: Person, image: Image) -> None:
    mark(priya, image, {"marks": marks()})
    row = Marking.objects.get()
    row.note = "another"
    with pytest.raises(TypeError, match="only added to"):
        row.save()
