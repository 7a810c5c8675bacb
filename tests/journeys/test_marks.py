"""Lengths from an image on a phone: taken in flight mode, calibrated, marked by finger, put right by a supervisor.

The radiograph is drawn with known lengths and bends (`tests/radiographs.py`); fingers are a pixel off.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from playwright.sync_api import Page, expect

from tests.journeys.conftest import Opens
from tests.journeys.hands import person, sign_in, type_mm
from tests.journeys.marking import (
    DRAWN,
    IMAGE,
    MB,
    WITHIN_DEG,
    WITHIN_MM,
    D,
    a_second_later,
    add_image,
    charted,
    chip,
    interval,
    mark_instrument,
    measure,
    pane,
    programme,
    touch,
    zoom_of,
)
from tests.journeys.records import PLAN, send
from tests.radiographs import drawn


def tip_against_its_stop(page: Page) -> None:
    """An instrument drawn at 18 mm is where a stop of 18 has it, and not where one of 16.5 has it."""
    chip(page, "MB").tap()
    page.get_by_text("An instrument stands in this canal").tap()
    page.get_by_role("button", name="Mark its tip").tap()
    touch(page, DRAWN, MB.along(np.array([MB.instrument_mm])), 8)
    type_mm(page, "Stop set at", "16.5")
    expect(page.get_by_text("by its stop 16.5")).to_be_attached()
    expect(page.get_by_text(re.compile(r"The tip lies 1\.[3-7] mm deeper than its stop has it"))).to_be_visible()
    type_mm(page, "Stop set at", "18")
    expect(page.get_by_text("than its stop has it")).to_have_count(0)
    # A length is wanted here and no confirming image.
    for _ in range(3):
        page.get_by_role("button", name="Undo").tap()
    expect(page.get_by_text("Tip short of the end")).to_have_count(0)


@pytest.fixture
def photo(tmp_path: Path) -> Path:
    return DRAWN.png(tmp_path / "drawn.png")


def test_lengths_are_marked_in_flight_mode_and_one_is_put_right(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any], photo: Path
) -> None:
    phone, laptop = open_phone(), open_laptop()
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = charted(phone, "Bench 241")
    # What belongs to the case comes along: plans, images, and the figures that marks are sure by.
    with phone.expect_request_finished(lambda asked: asked.url.endswith(f"/cases/{case}/images")):
        phone.goto(f"/cases/{case}")
    expect(phone.get_by_text("Add an image")).to_be_visible()
    phone.wait_for_load_state("networkidle")
    phone.context.set_offline(True)
    add_image(phone, photo)
    phone.get_by_role("link", name="Mark and measure").tap()

    mark_instrument(phone, DRAWN, MB, 18)
    expect(phone.get_by_text("Scale: instrument, 18.0 mm.")).to_be_visible()
    expect(phone.get_by_text(re.compile(r"By itself it puts lengths off by up to \d\.\d\s%"))).to_be_visible()
    for root in (MB, D):
        measure(phone, DRAWN, root)
        least, most = interval(phone, "Length")
        assert least <= root.length_mm <= most
    tip_against_its_stop(phone)
    phone.get_by_role("button", name="Keep these marks").tap()
    expect(phone.get_by_text("They are sent after their image")).to_be_visible()
    phone.reload()
    expect(phone.get_by_text("They are sent after their image")).to_be_visible()

    phone.context.set_offline(False)
    expect(phone.get_by_text("taken as a reading")).to_have_count(2, timeout=30_000)
    canals = {canal["name"]: canal for canal in phone.request.get(f"/api/v1/cases/{case}").json()["canals"]}
    for root in (MB, D):
        taken = canals[root.canal]["readings"][0]["reading"]
        assert taken["tooth_mm"] == pytest.approx(root.length_mm, abs=WITHIN_MM)
        assert canals[root.canal]["curvature_deg"] == pytest.approx(abs(root.bend_deg) / 2, abs=WITHIN_DEG)

    kit = phone.request.get(f"/api/v1/programmes/{programme(phone)}/kits").json()["results"][0]["id"]
    send(phone, "POST", f"cases/{case}/plan-versions", {"kit_id": kit, **PLAN})
    image = phone.request.get(f"/api/v1/cases/{case}/images").json()["images"][0]["id"]
    laptop.goto(f"/cases/{case}/images/{image}")
    laptop.get_by_role("button", name="Go on from 1").click()
    put_right(laptop)
    laptop.get_by_role("button", name="Keep these marks").click()
    says = r"MB .* 0\.[456] mm longer than before · its end marked \d\.\d mm away"
    expect(laptop.get_by_text(re.compile(says))).to_be_visible(timeout=15_000)
    phone.goto(f"/cases/{case}/images/{image}")
    expect(phone.get_by_text("puts 1 right")).to_be_visible(timeout=15_000)
    what_it_does_to_the_plan(phone)

    phone.goto(f"/cases/{case}")
    add_image(phone, photo)
    # The server has it.
    expect(phone.get_by_role("link", name="Images side by side")).to_be_visible(timeout=30_000)
    side_by_side(laptop, case)


def what_it_does_to_the_plan(phone: Page) -> None:
    """Plan 1 is set against what the corrected length makes of it: MB ends half a millimetre deeper, D where it did."""
    phone.get_by_role("link", name="What this does to the plan").first.tap()
    phone.get_by_role("button", name=re.compile("against plan 1")).tap(timeout=20_000)
    ends = phone.get_by_role("listitem").filter(has_text="ends at")
    expect(ends).to_have_count(1)
    of_mb = phone.get_by_role("region", name="MB", exact=True).get_by_role("listitem")
    expect(of_mb.filter(has_text="ends at")).to_have_count(1)
    texts = (ends.get_by_role("deletion").inner_text(), ends.get_by_role("insertion").inner_text())
    before, now = (float(re.findall(r"[\d.]+", text)[0]) for text in texts)
    assert now - before == pytest.approx(0.5, abs=0.15)


def test_an_intra_oral_file_is_marked_on_the_scale_it_brings(
    open_phone: Opens, demo: Mapping[str, Any], tmp_path: Path
) -> None:
    """DICOM with pixels taller than wide and the beam's magnification: no browser draws it, the server does."""
    phone = open_phone()
    sign_in(phone, person(demo, "student"))
    case = charted(phone, "Bench 242")
    image = drawn(MB, D, row_mm=0.04, column_mm=0.03)
    phone.goto(f"/cases/{case}")
    add_image(phone, image.dicom(tmp_path / "drawn.dcm"))
    expect(phone.locator("[data-drawn='small image'][src*=thumbnail]")).to_be_visible(timeout=30_000)
    phone.get_by_role("link", name="Mark and measure").tap()
    for root in (MB, D):
        measure(phone, image, root)
        least, most = interval(phone, "Length")
        assert least <= root.length_mm <= most
    shown = phone.locator(IMAGE).bounding_box()
    assert shown is not None
    # Pixels of 0.04 by 0.03 mm: the picture is as tall as what it shows.
    rows, columns = image.grey.shape
    assert shown["height"] / shown["width"] == pytest.approx(rows * 0.04 / (columns * 0.03), rel=1e-3)
    expect(phone.get_by_text("taken down by the file's estimated magnification of 1.06")).to_be_visible()
    path = f"cases/{case}/images/{phone.url.rpartition('/')[2]}"
    send(phone, "POST", f"{path}/move", {"canal": "D"})
    expect(phone.get_by_text("This image was put from the whole tooth to D.")).to_be_visible()
    phone.get_by_role("button", name="Keep these marks").tap()
    expect(phone.get_by_text("taken as a reading")).to_have_count(2, timeout=30_000)
    struck_and_removed(phone, path)


def struck_and_removed(phone: Page, path: str) -> None:
    """While somebody marks it: said at once, and what is marked stays; no length can be taken any more."""
    ways = phone.locator("[data-drawn=mark]")
    box = pane(phone).bounding_box()
    assert box is not None
    for share in (0.3, 0.7):
        a_second_later(phone)
        phone.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] * share)
    expect(ways).to_have_count(2)
    takes = phone.get_by_label(re.compile("becomes a reading"))
    expect(takes).to_have_count(1)
    send(phone, "POST", f"{path}/strike", {"why": "not_so"})
    expect(phone.get_by_text("This image was struck: it does not show what it should.")).to_be_visible()
    expect(ways).to_have_count(2)
    expect(takes).to_have_count(0)
    send(phone, "POST", f"{path}/remove", {"reason": "not_usable"})
    expect(phone.get_by_text("removed before your marks on it were kept")).to_be_visible()


def side_by_side(laptop: Page, case: str) -> None:
    """A second image beside the first: zoomed together until that is switched off; marks come and go."""
    laptop.goto(f"/cases/{case}")
    laptop.get_by_role("link", name="Images side by side").click()
    images = laptop.locator(IMAGE)
    expect(images).to_have_count(2)
    expect(laptop.locator("[data-drawn=line]")).to_have_count(4)
    laptop.get_by_role("button", name="Nearer").first.click()
    zooms = [zoom_of(images.nth(side)) for side in (0, 1)]
    assert zooms[0] == zooms[1]
    laptop.get_by_label("Zoom together").uncheck()
    laptop.get_by_role("button", name="Nearer").first.click()
    assert zoom_of(images.nth(0)) > zoom_of(images.nth(1))
    laptop.get_by_label("Show marks").uncheck()
    expect(laptop.locator("[data-drawn=line]")).to_have_count(0)


def put_right(laptop: Page) -> None:
    """The end of MB half a millimetre deeper: picked, and moved by keys along the root."""
    chip(laptop, "MB").click()
    before = float(re.findall(r"[\d.]+", chip(laptop, "MB").inner_text())[0])
    # Nothing is picked yet: before the first comes the last.
    laptop.get_by_role("button", name="Pick the mark before").click()
    pane(laptop).focus()
    for _ in range(60):
        if float(re.findall(r"[\d.]+", chip(laptop, "MB").inner_text())[0]) >= before + 0.5:
            return
        laptop.keyboard.press("ArrowDown")
        laptop.keyboard.press("ArrowRight")
    raise AssertionError("sixty steps did not make it longer")
