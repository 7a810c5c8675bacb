"""Requests on condition of what was seen (RFC 9110, 13): the same rule at every address that has a tag."""

from __future__ import annotations

import pytest

from cases.models import Person, ToothPlanVersion
from tests.cast import API, client, problem

ADDRESSES = ("events", "bands", "record", "record.pdf", "course.pdf", "images")


@pytest.fixture(params=[*(f"cases/{{case}}/{name}" for name in ADDRESSES), "programmes/{programme}/running-work"])
def address(request: pytest.FixtureRequest, approved: ToothPlanVersion) -> str:
    programme = approved.case.patient.programme_id
    return f"{API}/{request.param.format(case=approved.case_id, programme=programme)}"


def test_what_was_seen_is_not_sent_again(vale: Person, address: str) -> None:
    """13.1.2: by weak comparison, of any tag of a list, and of `*` where there is something."""
    browser = client(vale)
    tag = browser.get(address)["ETag"]
    for seen in (tag, f"W/{tag}", f'"another", {tag}', "*"):
        again = browser.get(address, headers={"If-None-Match": seen})
        assert (again.status_code, again.content, again["ETag"]) == (304, b"", tag)
    for seen in ('"another"', tag.strip('"'), ""):
        assert browser.get(address, headers={"If-None-Match": seen}).status_code == 200


def test_what_is_no_longer_as_it_was_seen_is_refused_in_words(vale: Person, address: str) -> None:
    """13.1.1."""
    problem(client(vale).get(address, headers={"If-Match": '"another"'}), 412, "changed-since")
    assert client(vale).get(address, headers={"If-Match": "*"}).status_code == 200


def test_a_tag_tells_a_stranger_nothing(stranger: Person, address: str) -> None:
    assert client(stranger).get(address, headers={"If-None-Match": "*"}).status_code == 404
