"""What is on its way out says so in its answers: RFC 9745's and RFC 8594's own examples, and in the description."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

import http_sf
import pytest
from django.urls import include, path
from drf_spectacular.generators import SchemaGenerator

from cases.api import deprecation
from cases.api.deprecation import DEPRECATED, Deprecated
from cases.api.needs import NEEDS
from cases.api.v1 import urls
from cases.models import Case, Person
from tests.cast import API, client

GOES = Deprecated(
    # RFC 9745, 2.1: Friday, June 30, 2023 at 23:59:59 UTC. RFC 8594, 3: the example's moment.
    since=datetime(2023, 6, 30, 23, 59, 59, tzinfo=UTC),
    sunset=datetime(2018, 12, 31, 23, 59, 59, tzinfo=UTC),
    instead="the worklist",
)
LIST = "programmes/{programme_id}/cases"


@pytest.fixture
def goes(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(DEPRECATED, ("GET", LIST), GOES)


@pytest.mark.usefixtures("goes")
def test_what_goes_says_so_and_until_when(opened: Case, vale: Person) -> None:
    browser, where = client(vale), f"{API}/programmes/{opened.programme_id}/cases"
    for answer in (browser.get(where), browser.head(where), browser.get(f"{where}?limt=3")):
        assert answer["Deprecation"] == "@1688169599"
        item: Any = http_sf.parse(answer["Deprecation"].encode(), tltype="item")
        assert item[0] == GOES.since
        assert answer["Sunset"] == "Mon, 31 Dec 2018 23:59:59 GMT"
        assert answer["Link"] == f'<{API}/guide/changes>; rel="deprecation"; type="text/markdown"'
    assert "Deprecation" not in browser.post(where, {}).headers
    assert "Deprecation" not in browser.get(f"{API}/cases/{opened.pk}").headers


@pytest.mark.usefixtures("goes")
def test_the_description_marks_it() -> None:
    of_the_list = [each for each in urls.urlpatterns if str(each.pattern).endswith("/cases")]
    generator = SchemaGenerator(patterns=[path("api/v1/", include(of_the_list))])
    described = generator.get_schema(public=True)["paths"][f"{API}/{LIST}"]
    assert described["get"]["deprecated"] is True
    assert described["get"]["description"].endswith("Until 2018-12-31. Instead: the worklist")
    assert "deprecated" not in described["post"]


def test_what_is_said_to_go_is_there_and_stays_for_a_year() -> None:
    for (method, address), each in deprecation.DEPRECATED.items():
        assert method in NEEDS[address]
        assert (each.sunset - each.since).days >= 365
