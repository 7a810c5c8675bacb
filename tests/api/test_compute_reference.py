"""What is the same for everybody: teeth, techniques, sizes."""

from __future__ import annotations

import pytest
from rest_framework.test import APIClient

from tests.api.compute import ROOT, get, post, problem

OPEN_TO_ALL = ["teeth", "teeth/26", "techniques", "instrument-sizes"]
MOLAR = {
    "iso_3950": "26",
    "universal": "14",
    "palmer": "UL6",
}


@pytest.mark.parametrize("path", OPEN_TO_ALL)
def test_it_is_open_to_all_and_kept_until_it_changes(path: str) -> None:
    stranger = APIClient()
    first = stranger.get(ROOT + path)
    assert first.status_code == 200
    again = stranger.get(ROOT + path, headers={"If-None-Match": first["ETag"]})
    assert (again.status_code, again.content) == (304, b"")


@pytest.mark.parametrize("path", OPEN_TO_ALL)
def test_it_is_read_only(path: str) -> None:
    problem(post(path, {}), 405, "method-not-allowed")


def test_all_52_teeth_come_at_once() -> None:
    teeth = get("teeth").json()["results"]
    assert len({tooth["iso"] for tooth in teeth}) == 52
    assert next(tooth for tooth in teeth if tooth["iso"] == "26") == get("teeth/26").json()


@pytest.mark.parametrize("iso", ["99", "19", "UL6", "a" * 100])
def test_an_address_of_no_tooth_is_not_there(iso: str) -> None:
    problem(get(f"teeth/{iso}"), 404, "not-found")


def test_the_provided_techniques() -> None:
    techniques = get("techniques").json()["results"]
    assert {technique["key"] for technique in techniques} == {"crown-down", "step-back"}
    assert all(technique["source"] and technique["phases"] for technique in techniques)


def test_the_size_series_with_colours_and_d16() -> None:
    """ISO 3630-1 as printed in Qualtrough et al., Principles of Operative Dentistry, 2005, p. 63; D16 = tip + 0.32."""
    sizes = {each["size"]: each for each in get("instrument-sizes").json()["results"]}
    assert list(sizes) == [6, 8, *range(10, 60, 5), *range(60, 150, 10)]
    colours = ["white", "yellow", "red", "blue", "green", "black"]
    assert [sizes[size]["colour"] for size in (6, 8, 10)] == ["pink", "grey", "purple"]
    assert [sizes[size]["colour"] for size in (15, 20, 25, 30, 35, 40)] == colours
    assert [sizes[size]["colour"] for size in (45, 50, 55, 60, 70, 80)] == colours
    assert [sizes[size]["colour"] for size in (90, 100, 110, 120, 130, 140)] == colours
    assert [sizes[size]["d16_mm"] for size in (15, 25, 40)] == [0.47, 0.57, 0.72]
    assert [sizes[size]["tip_mm"] for size in (6, 25, 140)] == [0.06, 0.25, 1.4]


@pytest.mark.parametrize("notation", MOLAR)
def test_a_tooth_is_found_in_any_notation(notation: str) -> None:
    tooth = post("compute/tooth", {"notation": notation, "designation": MOLAR[notation]}).json()
    assert (tooth["iso"], tooth["universal"], tooth["palmer"], tooth["palmer_glyph"]) == ("26", "14", "UL6", "⎿6")
    assert [canal["name"] for canal in tooth["canals"]] == ["MB1", "MB2", "DB", "P"]


def test_a_primary_tooth_is_found() -> None:
    assert post("compute/tooth", {"notation": "universal", "designation": "K"}).json()["primary"] is True


def test_14_alone_is_refused_with_both_teeth_it_could_be() -> None:
    errors = problem(post("compute/tooth", {"designation": "14"}), 422, "notation-missing")
    assert "maxillary right first premolar" in errors["#/notation"]
    assert "maxillary left first molar" in errors["#/notation"]


def test_an_unknown_tooth_is_refused_with_what_it_could_be() -> None:
    errors = problem(post("compute/tooth", {"notation": "iso_3950", "designation": "19"}), 422, "unknown-tooth")
    assert "In Universal it is the mandibular left first molar" in errors["#/designation"]


@pytest.mark.parametrize(
    ("sent", "errors"),
    [
        ({"notation": "iso_3950"}, {"#/designation": "Fill this in."}),
        ({"notation": "iso", "designation": "26"}, {"#/notation": "Must be 'iso_3950', 'universal' or 'palmer'."}),
        ({"notation": "iso_3950", "designation": 26}, {"#/designation": "Must be text."}),
        ({"notation": "iso_3950", "designation": "26", "side": "left"}, {"#/side": "Is not known here."}),
        (["26"], {"#": "Must be an object."}),
    ],
)
def test_what_is_not_understood_is_told_where_it_stands(sent: object, errors: dict[str, str]) -> None:
    assert problem(post("compute/tooth", sent), 400, "not-understood") == errors


def test_computing_is_for_people_signed_in() -> None:
    answer = APIClient().post(ROOT + "compute/tooth", {"notation": "iso_3950", "designation": "26"}, format="json")
    problem(answer, 401, "not-authenticated")
