"""The depth board under a finger: every mark answers where it stands, and with a key."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Mapping
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from tests.journeys.conftest import PHONE, TALL_PHONE, Opens
from tests.journeys.hands import column, person, sign_in, unfold
from tests.journeys.records import approved_case, plan_anew, report, send, submitted_plan

LEAST_PX, GLOVED_PX = 44, 56  # of a target; at the chair

# What is drawn, by its kind, with the middle of its box; and every place that answers a touch.
DRAWN = """(board) => {
  const boxes = (all) => [...board.querySelectorAll(all)].map((mark) => {
    const { x, y, width, height } = mark.getBoundingClientRect()
    return { x, y, width, height, says: mark.getAttribute('aria-label') ?? mark.textContent }
  })
  return {
    marks: boxes(`[data-drawn=end], [data-drawn="coronal stop"], [data-drawn=felt], [data-drawn=expected],
      [data-drawn="expected now"], [data-drawn=sign]`),
    numbers: boxes('[data-drawn=end]'),
    touches: boxes('[data-drawn=touch]'),
  }
}"""

# Room to spare under everything that a plan says.
UPRIGHT_TABLET = {"width": 800, "height": 1280}
# A board of another size than the one it came up with is drawn anew, as a slow phone feels.
REDRAWN = """(() => {
  window.redrawn = 0
  const counts = (changes) => { window.redrawn += changes.length }
  new MutationObserver(counts).observe(document, { subtree: true, attributeFilter: ['viewBox'] })
})()"""


def hit(mark: Mapping[str, float], touches: list[Mapping[str, float]]) -> list[Mapping[str, float]]:
    x, y = mark["x"] + mark["width"] / 2, mark["y"] + mark["height"] / 2
    return [t for t in touches if t["x"] <= x <= t["x"] + t["width"] and t["y"] <= y <= t["y"] + t["height"]]


def every_mark_answers(board: Locator, least_px: int) -> None:
    """Those of the selected canal, whichever it is; at the chair, where none can be selected, those of all."""
    expect(board.get_by_role("button").first).to_be_attached()
    columns = board.get_by_role("radio").all()
    for each in columns:
        each.check()
        place = each.bounding_box()
        assert place is not None
        answers(board, least_px, (place["x"], place["x"] + place["width"]))
    if not columns:
        answers(board, least_px, (-math.inf, math.inf))


def answers(board: Locator, least_px: int, between: tuple[float, float]) -> None:
    drawn = board.evaluate(DRAWN)
    for kind in ("marks", "numbers"):
        drawn[kind] = [each for each in drawn[kind] if between[0] <= each["x"] + each["width"] / 2 <= between[1]]
    assert len(drawn["marks"]) >= 2 * len(drawn["numbers"]) > 0
    for mark in drawn["marks"]:
        assert len(hit(mark, drawn["touches"])) == 1, (mark, drawn["touches"])
    for number in drawn["numbers"]:
        (touch,) = hit(number, drawn["touches"])
        assert number["says"] in str(touch["says"])
    for touch in drawn["touches"]:
        assert min(touch["width"], touch["height"]) >= least_px - 0.5, touch
    for first in drawn["touches"]:
        for other in drawn["touches"]:
            beside = first["x"] + first["width"] <= other["x"] + 0.5 or other["x"] + other["width"] <= first["x"] + 0.5
            apart = first["y"] + first["height"] <= other["y"] + 0.5 or other["y"] + other["height"] <= first["y"] + 0.5
            assert first is other or beside or apart, (first, other)


def answers_a_key(page: Page, board: Locator) -> None:
    for key in ("Enter", "Space"):
        touch = board.get_by_role("button").last
        touch.focus()
        page.keyboard.press(key)
        expect(page.get_by_role("dialog")).to_be_visible()
        page.keyboard.press("Escape")
        expect(page.get_by_role("dialog")).to_be_hidden()
        expect(touch).to_be_focused()


def to_what_is_felt(page: Page, case: str, canal: str) -> None:
    """Works the canal to its first engine instrument, which stops short."""
    for _ in range(20):
        treatment = page.request.get(f"/api/v1/cases/{case}/events").json()
        node = next(each["node"] for each in treatment["canals"] if each["canal"] == canal)
        engine = node.startswith("coronal-flaring/") and not node.endswith("irrigate")
        exit_ = "done" if node.endswith("irrigate") else "short" if engine else "reached"
        depth = {"depth_um": 10_500, "stop_um": 11_000} if engine else {}
        report(page, case, treatment["course"]["plan_hash"], [(canal, node, {"kind": "step", "exit": exit_, **depth})])
        if engine:
            return
    pytest.fail("no engine instrument came")


@pytest.mark.parametrize("size", [PHONE, TALL_PHONE], ids=["360", "412"])
def test_every_mark_answers_where_it_stands(
    open_phone: Opens, laptop: Page, demo: Mapping[str, Any], size: Mapping[str, int]
) -> None:
    phone = open_phone(viewport=size)
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = approved_case(demo, phone, laptop, f"Bench 41{size['width']}")
    phone.goto(f"/cases/{case}/plan")
    board = phone.get_by_role("figure")
    every_mark_answers(board, LEAST_PX)
    answers_a_key(phone, board)
    touch = board.get_by_role("button").last
    touch.tap()
    expect(phone.get_by_role("dialog")).to_contain_text("Where it comes from")


def test_a_stored_plan_is_there_before_it_is_computed_once_more(open_phone: Opens, demo: Mapping[str, Any]) -> None:
    phone = open_phone(viewport=UPRIGHT_TABLET)
    phone.add_init_script(REDRAWN)
    sign_in(phone, person(demo, "student"))
    version = submitted_plan(phone, "Bench 262")
    busy = {"type": "/api/v1/problems/busy", "title": "Busy", "status": 503, "detail": "Busy."}
    headers = {"Retry-After": "30", "Content-Type": "application/problem+json"}
    phone.route("**/preview", lambda route: route.fulfill(status=503, headers=headers, body=json.dumps(busy)))
    with phone.expect_response("**/preview"):
        phone.goto(f"/cases/{version['case_id']}/plan")
    expect(phone.get_by_role("img", name="Depth board")).to_be_visible()
    # Nothing has changed since: nobody waits for anything.
    expect(phone.get_by_text("The server computes for others first")).to_have_count(0)

    # Who reads on keeps the place when the case turns out to have changed.
    other = column(phone, "ML")
    other.check()
    unfold(phone, "All stops")
    table = phone.get_by_role("table")
    expect(table).to_be_visible()
    # What stands under the board has come meanwhile, and left it as it was.
    assert phone.evaluate("() => window.redrawn") == 0
    canal = phone.request.get(f"/api/v1/cases/{version['case_id']}").json()["canals"][0]
    send(phone, "PATCH", f"canals/{canal['id']}", {"curvature_deg": 20})
    expect(phone.get_by_text("The case has changed since")).to_be_visible(timeout=30_000)
    expect(phone.get_by_text("The server computes for others first")).to_be_visible()
    expect(other).to_be_checked()
    expect(table).to_be_visible()

    # Nor does a version that comes meanwhile take it: the former one stays until that one is here.
    held: list[Route] = []
    texts = re.compile("/texts/")
    phone.route(texts, lambda route: held.append(route))
    with phone.expect_request(texts):
        number = plan_anew(phone, version["case_id"])["number"]
    expect(other).to_be_checked()
    expect(table).to_be_visible()
    expect(phone.get_by_text(f"Plan {number} waits")).to_have_count(0)
    for route in held:
        route.continue_()
    expect(phone.get_by_text(f"Plan {number} waits")).to_be_visible()
    expect(other).to_be_checked()
    expect(table).to_be_visible()
