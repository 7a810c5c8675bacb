"""What is asked at the chair, and its answers, are in sight: on small and larger phones, with larger text too."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any

import pytest
from playwright.sync_api import Frame, Locator, Page, Request, ViewportSize, expect

from tests.draws import WHOLE
from tests.journeys import screen
from tests.journeys.conftest import PHONE, SHORT_PHONE, TALL_PHONE, Opens
from tests.journeys.hands import person, sign_in
from tests.journeys.records import approved_case, plan_of, report
from tests.journeys.test_plan_in_force import another_plan

Told = Mapping[str, Any]
LEAST_TOUCH_PX = 56
# Not one thing that a role finds, but all that is drawn: what is measured is its layout.
EVERYTHING = "body *"
OF_SHEETS = "dialog *"
PRESSED = "main button, main summary"
# A file is chosen by a label; its input, a button too, is not drawn.
SHOWN = ":not(input)"

# What is not wholly on the screen, or lies under something else: the middle of each side and of the whole.
OUT_OF_SIGHT = """all => all.filter(each => {
  const { left, top, right, bottom } = each.getBoundingClientRect()
  const [x, y] = [(left + right) / 2, (top + bottom) / 2]
  const points = [[x, y], [left + 3, y], [right - 3, y], [x, top + 3], [x, bottom - 3]]
  return points.some(([x, y]) => !each.contains(document.elementFromPoint(x, y)))
}).map(each => each.innerText)"""

TOO_LOW = """(all, least) => all.filter(each => each.checkVisibility() && each.getBoundingClientRect().height < least)
.map(each => [each.innerText, each.getBoundingClientRect().height])"""

TOO_WIDE = """all => all.filter(each => each.checkVisibility())
.filter(each => !each.closest('nav[aria-label=Canals], svg'))
.map(each => [each, each.getBoundingClientRect()])
// What is there to be heard alone is a point of one pixel.
.filter(([, { width, right }]) => width > 1 && right > innerWidth + 0.5)
.map(([each]) => each.outerHTML.slice(0, 120))"""

# By the page's own clock: a page that has much to do is waited for longer.
STILL = """() => new Promise(go => {
  let timer
  const wait = () => { clearTimeout(timer); timer = setTimeout(go, 100) }
  const all = { subtree: true, childList: true, characterData: true, attributes: true }
  new MutationObserver(wait).observe(document, all)
  wait()
})"""

# Emergencies that a second touch would hit, all over the place of what was touched first.
UNDER_IT = """({ x, y, width, height }) => {
  const buttons = new Set()
  for (let across = 1; across < width; across += 4) for (let down = 1; down < height; down += 4)
    buttons.add(document.elementFromPoint(x + across, y + down)
      ?.closest('dialog [data-at-once] :is(button, a)')?.textContent)
  return [...buttons].filter(Boolean)
}"""


def as_it_stands(page: Page) -> None:
    """The page loaded anew, as the server has the case by now and not as it was kept on the phone."""
    loaded: list[Frame] = []
    page.once("framenavigated", lambda frame: loaded.append(frame))

    # What the page of before asked for may never be answered.
    def asked_anew(request: Request) -> bool:
        return bool(loaded) and request.method == "GET" and request.url.endswith("/events")

    with page.expect_request_finished(asked_anew):
        page.reload()
    page.evaluate(STILL)


def answered_with(page: Page) -> Locator:
    return screen.answers(page).get_by_role("button").and_(page.locator(SHOWN))


def ways_out(page: Page) -> Locator:
    return page.get_by_role("group", name="Ways out").get_by_role("button")


def takes_image(page: Page) -> Locator:
    return page.get_by_text(re.compile("^(Take a photo|Choose an image)$"))


def withheld(page: Page) -> Locator:
    return screen.card(page).get_by_role("alert")


def causes(page: Page) -> Locator:
    return screen.answers(screen.card(page)).get_by_role("button")


def picture(page: Page) -> Locator:
    """The canal in hand, drawn large, and the other canals beside it."""
    return screen.card(page).get_by_role("img").or_(screen.other_canals(page))


def looked_at(page: Page) -> Locator:
    return screen.dock(page).get_by_text(re.compile("^Look at "))


def new_plan(page: Page) -> Locator:
    return page.get_by_role("alert").get_by_role("heading", level=2)


def goes_on(page: Page) -> Locator:
    return screen.dock(page).get_by_role("button", name=re.compile("^I work by plan"))


def in_sight(page: Page, *asked: Callable[[Page], Locator]) -> None:
    """All of what is asked and all that it is answered with."""
    as_it_stands(page)
    for find in asked:
        place = find(page)
        expect(place.first).to_be_visible()
        expect(place.first).to_be_in_viewport()
        assert place.evaluate_all(OUT_OF_SIGHT) == [], place
    close = page.get_by_role("link", name="Close for today")
    assert page.locator(PRESSED).or_(close).evaluate_all(TOO_LOW, LEAST_TOUCH_PX) == []
    assert page.locator(EVERYTHING).evaluate_all(TOO_WIDE) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    problem = screen.dock(page).get_by_role("button", name="Problem")
    box = problem.bounding_box()
    problem.tap()
    expect(page.get_by_role("dialog")).to_be_visible()
    assert page.evaluate(UNDER_IT, box) == []
    # Nobody goes back before the sheet was painted, which is when it has its place in the history.
    page.wait_for_function("() => history.state?.sheet")
    page.go_back()
    expect(page.get_by_role("dialog")).to_be_hidden()


def sheet_in_sight(page: Page, button: str) -> None:
    """The sheet's question and every answer to it, what it is closed with too."""
    screen.dock(page).get_by_role("button", name=button).tap()
    sheet = page.get_by_role("dialog")
    expect(sheet.get_by_role("heading").first).to_be_visible()
    page.wait_for_function("() => document.querySelector('dialog').getAnimations({ subtree: true }).length === 0")
    buttons = sheet.get_by_role("button")
    assert sheet.get_by_role("heading", level=2).or_(buttons).evaluate_all(OUT_OF_SIGHT) == []
    assert buttons.evaluate_all(TOO_LOW, LEAST_TOUCH_PX) == []
    assert page.locator(OF_SHEETS).evaluate_all(TOO_WIDE) == []
    sheet.get_by_role("button", name="Close").tap()
    expect(sheet).to_be_hidden()


def test_no_emergency_is_told_by_the_second_of_two_touches(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    """Wherever the first one opened the sheet: for 420 ms its emergencies take no touch, after that they do."""
    phone, laptop = open_phone(), open_laptop()
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    phone.goto(f"/cases/{approved_case(demo, phone, laptop, 'Bench 420')}/chair")
    screen.dock(phone).get_by_role("button", name="Problem").tap()
    emergency = phone.get_by_role("dialog").get_by_role("button", name="A perforation is suspected")
    expect(emergency).to_be_visible()
    # The animation is its clock: stopped one moment before it is over, and then one after.
    at_ms = """ms => document.querySelector('dialog').getAnimations({ subtree: true })
        .filter(one => one.animationName === 'not-yet').map(one => { one.pause(); one.currentTime = ms }).length"""
    assert phone.evaluate(at_ms, 415) == 1
    box = emergency.bounding_box()
    assert box is not None
    middle = (box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    phone.touchscreen.tap(*middle)
    screen.drawn(phone)
    expect(phone.get_by_role("dialog")).to_be_visible()
    expect(screen.halted(phone)).to_have_count(0)
    phone.evaluate(at_ms, 425)
    phone.touchscreen.tap(*middle)
    expect(screen.halted(phone)).to_be_visible()


# In the gate the smallest phone and the larger text, where least has room.
SIZES = [(SHORT_PHONE, 100), (PHONE, 130), *([(PHONE, 100), (TALL_PHONE, 100), (TALL_PHONE, 130)] if WHOLE else [])]


@pytest.mark.parametrize(("viewport", "larger"), SIZES, ids=[f"{phone['width']}-{text}" for phone, text in SIZES])
def test_each_kind_of_step(
    viewport: ViewportSize, larger: int, open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(viewport=viewport), open_laptop()
    # As a phone does whose text is set larger.
    phone.add_init_script(f"""addEventListener('DOMContentLoaded', () => {{
        document.documentElement.style.fontSize = '{larger}%' }})""")
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = approved_case(demo, phone, laptop, f"Bench {viewport['width'] + larger}")
    plan = phone.request.get(f"/api/v1/cases/{case}/events").json()["course"]["plan_hash"]

    def does(node: str, exit: str, **more: Any) -> None:
        report(phone, case, plan, [("MB", node, {"kind": "step", "exit": exit, **more})])

    def word(node: str, payload: Told) -> None:
        report(laptop, case, plan, [("MB", node, {**payload, "reason": "Seen."})])

    step = (screen.what, answered_with, ways_out)
    phone.goto(f"/cases/{case}/chair")
    in_sight(phone, *step)  # an instrument to its length
    does("explore/10-02", "reached")
    in_sight(phone, *step)  # irrigation
    does("explore/10-02/irrigate", "done")
    in_sight(phone, *step, takes_image)
    does("length/image", "done", no_image="image_elsewhere")
    in_sight(phone, *step)  # a hold point
    report(phone, case, plan, [("MB", "", {"kind": "pause", "what": "not_sure", "reason": ""})])
    in_sight(phone, withheld, ways_out)
    word("", {"kind": "resume"})
    word("length/sign-off", {"kind": "sign_off", "exit": "approved", "despite_missing": True})

    node = to_resistance(phone, case, does)
    in_sight(phone, *step, picture, screen.strip)
    report(phone, case, plan, [("ML", "", {"kind": "turn"})])
    in_sight(phone, looked_at, *step)  # what comes from another canal is looked at
    sheet_in_sight(phone, "Discard")
    report(phone, case, plan, [("MB", "", {"kind": "turn"})])
    does(node["node"], "short", stop_um=node["stop_um"], depth_um=node["stop_um"] + 1000)
    in_sight(phone, withheld, causes, ways_out)  # past the stop
    word("", {"kind": "resume"})
    another_plan(phone, laptop, case, set_mm=16.0)
    in_sight(phone, new_plan, goes_on)


def to_resistance(phone: Page, case: str, does: Any) -> Mapping[str, Any]:
    """MB is worked as expected until an instrument is due that goes as deep as it goes; returns where it stands."""
    version = phone.request.get(f"/api/v1/cases/{case}/plan-versions").json()["results"][0]["id"]
    plan = plan_of(phone, version)
    sheet = next(canal["run_sheet"] for canal in plan["canals"] if canal["canal"] == "MB")
    deep = {name for name, node in sheet["nodes"].items() if node.get("target") == "to_resistance"}
    for _ in range(30):
        treatment = phone.request.get(f"/api/v1/cases/{case}/events").json()
        node: Mapping[str, Any] = next(each for each in treatment["canals"] if each["canal"] == "MB")
        if node["node"] in deep:
            return node
        does(node["node"], "done" if node["node"].endswith("irrigate") else "reached")
    raise AssertionError("no instrument to resistance")
