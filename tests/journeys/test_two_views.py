"""One root from two directions: which canal lies buccal, and how far one bends in space.

Both canals were placed in space and projected, straight and with the tube turned 40 degrees to the mesial; fingers are
a pixel off. Mesial is to the right.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.journeys.conftest import Opens
from tests.journeys.hands import choose, person, sign_in, type_mm
from tests.journeys.marking import WITHIN_DEG, add_image, charted, mark_canal, mark_instrument, say_where_it_bends
from tests.radiographs import Radiograph, Root, drawn

TURN_DEG, BEND_DEG, DEEPER_MM = 40, 60, 3
# ML lies 3 mm nearer the tongue: seen from the mesial it stands to the mesial of where it stood.
MOVED_MM = DEEPER_MM * math.sin(math.radians(TURN_DEG))


def view(turned_deg: float, ml_mm: float) -> tuple[Radiograph, Root, Root]:
    """What the tube sees that is turned this far from straight before MB's bend."""
    mb = Root(
        canal="MB",
        begins=(6, 4),
        straight_mm=12,
        radius_mm=9,
        bend_deg=BEND_DEG,
        instrument_mm=16,
        seen_from_deg=turned_deg,
    )
    ml = Root(canal="ML", begins=(ml_mm, 4), straight_mm=14, radius_mm=20, bend_deg=10)
    return drawn(mb, ml), mb, ml


VIEWS = (view(-15, 13), view(TURN_DEG - 15, 13 + MOVED_MM))


def mark_view(page: Page, seen: tuple[Radiograph, Root, Root]) -> None:
    image, mb, ml = seen
    mark_instrument(page, image, mb, 12)  # its straight part alone is seen at its length
    for root in (mb, ml):
        mark_canal(page, image, root, 6)
        say_where_it_bends(page)
    page.get_by_role("button", name="Keep these marks").tap()
    expect(page.get_by_text("taken as a reading")).to_have_count(2, timeout=30_000)


def test_two_views_tell_the_side_and_the_bend_in_space(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any], tmp_path: Path
) -> None:
    phone, laptop = open_phone(), open_laptop()
    sign_in(phone, person(demo, "student"))
    case = charted(phone, "Bench 243")
    for number, seen in enumerate(VIEWS):
        phone.goto(f"/cases/{case}")
        add_image(phone, seen[0].png(tmp_path / f"{number}.png"))
        phone.get_by_role("link", name="Mark and measure").nth(number).tap(timeout=30_000)
        mark_view(phone, seen)

    phone.goto(f"/cases/{case}/images")
    phone.get_by_text("Which canal is which?").tap()
    choose(phone.get_by_role("group", name="The tube moved to the"), "mesial")
    choose(phone.get_by_role("group", name="mesial is to the"), "right")
    expect(phone.get_by_text("MB lies buccal of ML.")).to_be_visible()
    expect(phone.get_by_role("img", name="From above").locator("[data-line=buccal]")).to_contain_text("MB")

    phone.get_by_text("Bend in space").tap()
    type_mm(phone, "Between them the tube turned by", "5")
    expect(phone.get_by_text("show too nearly the same")).to_be_visible()
    type_mm(phone, "Between them the tube turned by", str(TURN_DEG))
    phone.get_by_role("button", name="Keep and chart for MB").tap()
    kept = re.compile(r"1 · Ines Calder, \S+ · \d+° in space \(95\s% within")
    expect(phone.get_by_role("listitem").filter(has_text=kept)).to_be_visible()
    canals = {canal["name"]: canal for canal in phone.request.get(f"/api/v1/cases/{case}").json()["canals"]}
    assert canals["MB"]["curvature_deg"] == pytest.approx(BEND_DEG / 2, abs=WITHIN_DEG)

    sign_in(laptop, person(demo, "supervisor"))
    laptop.goto(f"/cases/{case}/images")
    laptop.get_by_text("Bend in space").click()
    expect(laptop.get_by_role("listitem").filter(has_text=kept)).to_be_visible()
