"""What a programme keeps, over the API."""

from __future__ import annotations

from typing import Any

import pytest

from cases.domain.uuid7 import uuid7
from cases.models import Kit, Person, Programme
from planning.foundation.encoding import encode
from planning.techniques.files import provided_techniques
from tests.cast import API, client, problem
from tests.planning.given import CHECK_KIT, SECOND_KIT


def at(programme: Programme, more: str = "") -> str:
    return f"{API}/programmes/{programme.pk}{more}"


def test_a_member_sees_the_programme(programme: Programme, priya: Person, vale: Person, stranger: Person) -> None:
    shown = client(priya).get(at(programme)).json()
    assert (shown["name"], shown["role"]) == ("Check programme", "student")
    assert shown["supervisors"] == [{"id": str(vale.pk), "name": "Vale", "signs_on_site": False}]
    for address in ("", "/kits", "/techniques"):
        problem(client(stranger).get(at(programme, address)), 404, "not-found")


def test_a_kit_comes_back_as_it_was_sent(programme: Programme, rosa: Person, priya: Person) -> None:
    body = {"id": str(uuid7()), "kit": encode(SECOND_KIT)}
    made = client(rosa).post(at(programme, "/kits"), body, format="json")
    assert made.status_code == 201
    assert client(rosa).post(at(programme, "/kits"), body, format="json").status_code == 200
    (shown,) = client(priya).get(at(programme, "/kits")).json()["results"]
    assert shown["id"] == body["id"]
    sent: dict[str, Any] = encode(SECOND_KIT)
    by_name = {(instrument["size"], instrument["taper"]): instrument for instrument in sent["instruments"]}
    assert {
        (instrument["size"], instrument["taper"]): instrument for instrument in shown["kit"]["instruments"]
    } == by_name


def test_cones_pluggers_and_spreaders_come_back_too(programme: Programme, rosa: Person, priya: Person) -> None:
    client(rosa).post(at(programme, "/kits"), {"kit": encode(CHECK_KIT)}, format="json")
    (shown,) = client(priya).get(at(programme, "/kits")).json()["results"]
    sizes = sorted((item["kind"], item["size"], item["taper"]) for item in shown["kit"]["filling"])
    assert sizes == sorted((item.kind, item.size, item.taper) for item in CHECK_KIT.filling)
    assert {kind for kind, _, _ in sizes} == {"cone", "plugger", "spreader"}


@pytest.mark.parametrize(
    ("item", "status"),
    [
        ({"kind": "cone", "size": 0, "taper": 2}, 422),
        ({"kind": "cone", "size": 30, "taper": -1}, 422),
        ({"kind": "cone", "size": 10**6, "taper": 2}, 422),
        ({"kind": "cone", "size": 25, "taper": 4}, 422),  # there already
        ({"kind": "wedge", "size": 30, "taper": 2}, 400),
    ],
)
def test_what_fills_must_be_possible(programme: Programme, rosa: Person, item: dict[str, Any], status: int) -> None:
    kit = encode(CHECK_KIT)
    kit["filling"].append(item)
    answer = client(rosa).post(at(programme, "/kits"), {"kit": kit}, format="json")
    assert answer.status_code == status, answer.json()
    place = f"#/kit/filling/{len(CHECK_KIT.filling)}"
    assert all(error["pointer"].startswith(place) for error in answer.json()["errors"])


def test_who_keeps_kits(programme: Programme, priya: Person, vale: Person, stranger: Person) -> None:
    body = {"kit": encode(CHECK_KIT)}
    for person in (priya, vale):
        problem(client(person).post(at(programme, "/kits"), body, format="json"), 403, "not-allowed")
    problem(client(stranger).post(at(programme, "/kits"), body, format="json"), 404, "not-found")
    assert not Kit.objects.exists()


@pytest.mark.parametrize(
    ("place", "value", "status", "pointer"),
    [
        ("largest_flute_mm", None, 422, "#/kit/instruments/12/largest_flute_mm"),
        ("largest_flute_mm", 0.2, 422, "#/kit/instruments/12/largest_flute_mm"),
        ("cutting_part_mm", 26, 422, "#/kit/instruments/12/cutting_part_mm"),
        ("speed_rpm", 0, 422, "#/kit/instruments/12/speed_rpm"),
        ("speed_rpm", 2**40, 422, "#/kit/instruments/12/speed_rpm"),
        ("motion", "shaking", 400, "#/kit/instruments/12/motion"),
        ("maker", "Somebody", 400, "#/kit/instruments/12/maker"),
    ],
)
def test_an_instrument_that_cannot_be(
    programme: Programme, rosa: Person, place: str, value: Any, status: int, pointer: str
) -> None:
    kit = encode(CHECK_KIT)
    kit["instruments"][12][place] = value
    answer = client(rosa).post(at(programme, "/kits"), {"kit": kit}, format="json")
    assert answer.status_code == status, answer.json()
    assert pointer in {error["pointer"] for error in answer.json()["errors"]}


def test_a_kits_name_is_taken_once(programme: Programme, rosa: Person, kit: Kit) -> None:
    answer = client(rosa).post(at(programme, "/kits"), {"kit": encode(CHECK_KIT)}, format="json")
    assert "#/kit/name" in problem(answer, 409, "taken-already")


def own_technique(**more: Any) -> dict[str, Any]:
    return {**encode(provided_techniques()["step-back"]), "key": "our-step-back", "name": "Ours"} | more


def test_a_technique_of_ones_own_stands_beside_the_provided(programme: Programme, rosa: Person, priya: Person) -> None:
    body = {"id": str(uuid7()), "technique": own_technique()}
    assert client(rosa).post(at(programme, "/techniques"), body, format="json").status_code == 201
    assert client(rosa).post(at(programme, "/techniques"), body, format="json").status_code == 200
    techniques = client(priya).get(at(programme, "/techniques")).json()["results"]
    assert {each["technique"]["key"]: each["provided"] for each in techniques} == {
        "crown-down": True,
        "step-back": True,
        "our-step-back": False,
    }
    problem(client(priya).post(at(programme, "/techniques"), body, format="json"), 403, "not-allowed")


@pytest.mark.parametrize(
    ("change", "status", "code"),
    [
        ({"key": "crown-down"}, 409, "taken-already"),
        ({"key": "Our Own"}, 422, "not-usable"),
        ({"phases": []}, 422, "technique-not-usable"),
        ({"recapitulate_size": 11}, 422, "technique-not-usable"),
        ({"phases": [{"key": "x"}]}, 400, "not-understood"),
    ],
)
def test_a_technique_that_cannot_be(
    programme: Programme, rosa: Person, change: dict[str, Any], status: int, code: str
) -> None:
    body = {"technique": own_technique(**change)}
    answer = client(rosa).post(at(programme, "/techniques"), body, format="json")
    assert any(place.startswith("#/technique/") for place in problem(answer, status, code))


def test_uses_and_variable_tapers_come_back_too(programme: Programme, rosa: Person, priya: Person) -> None:
    kit = encode(CHECK_KIT)
    kit["instruments"][-1] |= {
        "uses": 2,
        "most_uses": 8,
        "diameters": [{"from_tip_mm": 0.0, "diameter_mm": 0.5}, {"from_tip_mm": 16.0, "diameter_mm": 1.1}],
    }
    made = client(rosa).post(at(programme, "/kits"), {"kit": kit}, format="json")
    assert made.status_code == 201, made.json()
    (shown,) = client(priya).get(at(programme, "/kits")).json()["results"]
    assert kit["instruments"][-1] in shown["kit"]["instruments"]


@pytest.mark.parametrize(("place", "value"), [("uses", -1), ("most_uses", 0), ("uses", 10**9)])
def test_uses_must_be_possible(programme: Programme, rosa: Person, place: str, value: int) -> None:
    kit = encode(CHECK_KIT)
    kit["instruments"][0][place] = value
    answer = client(rosa).post(at(programme, "/kits"), {"kit": kit}, format="json")
    assert answer.status_code == 422
    assert all(error["pointer"].startswith("#/kit/instruments/0") for error in answer.json()["errors"])
