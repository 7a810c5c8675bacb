"""Wet gloves: double taps over the whole of a tooth, and nothing answered that was not in sight for 400 ms.

The seed says what is tapped and how quickly again; what the phone makes of it depends on the time that it takes too.
"""

from __future__ import annotations

import os
import random
import time
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from itertools import groupby, pairwise
from operator import itemgetter
from typing import Any

from playwright.sync_api import Page, expect

from planning.instruments.iso_3630 import size_above
from tests.journeys import screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import person, sign_in
from tests.journeys.records import approved_case, approves, events, plan_anew, plan_of, report

# At least: it goes on until a canal is finished.
DOUBLE_TAPS = int(os.environ.get("DOUBLE_TAPS", "240"))
SHOWN_MS = 400  # what a tap answers must have been on the screen for so long
GAP_S = (0.020, 0.350)  # from finger down to finger down, the short ones more often
SEED = int(os.environ.get("SEED", "77057"))
STUCK = "to_plan"  # so often blocked, or so short, that the canal has to be planned anew

# Watches the page from outside the app: since when the screen asks what it asks, when each finger went down, and what
# the app wrote down for it. What runs by itself (a time that is counted) is no change of what is asked.
# By its looks: whatever a person sees change counts, and much of it is drawn without a role.
WATCH = """
window.seen = { since: 0, asked: '', double: 0, downs: [], down: null, taken: null, written: [] }
const text = (all) => [...document.querySelectorAll(all)].map((element) => element.textContent).join(' | ')
const asked = () => [
  text('.now-where b'), text('.new-plan h2'), text('.now-where'), text('.now-what'),
  text('.dock-grid .strong'), text('.now-card > .notice'), text('dialog[open] h2'),
  text('.dock .step-answers > button').replace(/[0-9]+:[0-9]+/g, '').replace(/Stopped at [^|]*/, 'Stopped at'),
].join(' / ')
const look = () => {
  const now = asked()
  if (now !== seen.asked) Object.assign(seen, { before: seen.asked, asked: now, since: performance.now() })
}
new MutationObserver(look).observe(document, { subtree: true, childList: true, characterData: true, attributes: true })
addEventListener('pointerdown', ({ target, timeStamp: at }) => {
  const on = target.closest('button')?.textContent
  seen.down = { double: seen.double, at, asked: seen.asked, before: seen.before, shown_ms: at - seen.since, on }
  seen.downs.push([seen.double, at])
}, true)
// Whose touch it is shows when the app asks the store to write: that may be done only after another touch.
const touches = new WeakMap()
const { transaction } = IDBDatabase.prototype
IDBDatabase.prototype.transaction = function (...of) {
  const made = transaction.apply(this, of)
  if (window.event?.type === 'click') touches.set(made, seen.down)
  return made
}
const add = IDBObjectStore.prototype.add
IDBObjectStore.prototype.add = function (entry, ...key) {
  if (this.name === 'outbox') {
    const { id, canal, seen_position, payload } = entry.event
    const goes_on = !touches.has(this.transaction)
    if (!goes_on) seen.taken = touches.get(this.transaction)
    seen.written.push({ id, canal, seen_position, payload, goes_on, ...seen.taken })
  }
  return add.call(this, entry, ...key)
}
"""

# Nothing is written down before `leaveOff`.
KEEP_STORE_BUSY = """() => new Promise((busy) => {
  indexedDB.open('fourth-canal').onsuccess = ({ target: { result: db } }) => {
    const outbox = db.transaction('outbox', 'readwrite').objectStore('outbox')
    let left = false
    window.leaveOff = () => { left = true }
    const again = () => { if (!left) outbox.count().onsuccess = again }
    again()
    busy()
  }
})"""

# Every button that a finger would hit now, but for emergencies, files and ways off the screen.
# By its looks: how often each is drawn goes by its place on the screen; that decides nothing about right and wrong.
BUTTONS = """(tooLarge) => {
// The size above the final one is to stay short: else the end is wider than planned, and the canal is planned anew.
const larger = tooLarge.some((name) => document.querySelector('.now-what')?.textContent.includes(name))
const OFTEN = [
  ...(larger ? [['.strip', 30], ['.chair:has(.strip[data-empty=false]) .dock .step-answers > .main', 60],
    ['.dock .step-answers > .button', 0.1]] : []),
  ['.dock .step-answers:has(> .main:disabled) > .answer', 60], ['.chair:has(.strip[data-empty=false]) .dock .main', 6],
  ['.dock .step-answers > .main', 60], ['.no-image > .button', 20],
  ['.step-answers:not(:has(.main)) > :nth-child(-n + 2)', 20],
  ['.sheet-in > .button:last-child', 6], ['.new-plan + .dock .main', 40],
  ['.canal-rows [aria-pressed="false"]', 40], ['.strip', 0.3],
  ['.chair:not(:has(.dock .main, .dock .step-answers p)) .canals > button', 20]]
seen.double++
// The longer nothing was written, the more often what moves the work on.
const stalled = seen.double - (seen.written.at(-1)?.double ?? 0)
return [...document.querySelectorAll('.chair :is(button:not(:disabled), .strip)')].flatMap((button) => {
  const { x, y, width, height } = button.getBoundingClientRect()
  // Above the middle of the strip a size stays short of its stop.
  const at = { x: x + width / 2, y: y + height * (button.matches('.strip') ? 0.4 : 0.5) }
  const hit = document.elementFromPoint(at.x, at.y)
  if (!hit || hit.closest('button, .strip') !== button || button.closest('[data-level="stop"]')) return []
  if (/photo|Choose an image|piece is missing|entr(y|ies) not sent/.test(button.textContent)) return []
  const [, often] = OFTEN.find(([which]) => button.matches(which)) ?? []
  return [{ ...at, often: often ? often * stalled : 1 }]
}) }"""


def status(page: Page, case: str) -> Mapping[str, Any]:
    treatment: Mapping[str, Any] = page.request.get(f"/api/v1/cases/{case}/events").json()
    return treatment


def above_the_final(page: Page, case: str) -> list[str]:
    """The hand instruments that gauge whether a canal's end is wider than its final size."""
    (newest, *_) = page.request.get(f"/api/v1/cases/{case}/plan-versions").json()["results"]
    plan = plan_of(page, newest["id"])
    return [f"{size_above(canal['final_size'])}/.02" for canal in plan["canals"] if canal["final_size"]]


def let_go_on(student: Page, supervisor: Page, case: str, treatment: Mapping[str, Any]) -> bool:
    """The supervisor lets every canal go on that waits for it. Whether one is finished."""
    assert "emergency" not in {each["payload"]["kind"] for each in treatment["events"]}, (
        "a double tap told an emergency"
    )
    words: list[tuple[str, str, Mapping[str, Any]]] = []
    for canal in treatment["canals"]:
        if canal["state"] == "hold_point":
            word = {"kind": "sign_off", "exit": "approved", "despite_missing": True, "reason": "Seen."}
            words.append((canal["canal"], canal["node"], word))
        elif canal["state"] in ("paused", "past_stop"):
            words.append((canal["canal"], "", {"kind": "resume", "reason": "Seen."}))
    if words:
        report(supervisor, case, treatment["course"]["plan_hash"], words)
    states = {canal["state"] for canal in treatment["canals"]}
    if STUCK in states:
        version = plan_anew(student, case)
        if version["state"] == "waiting":
            approves(supervisor, version)
    return "finished" in states


def tap_twice(phone: Page, dice: random.Random, too_large: Sequence[str]) -> None:
    """On one of the buttons in sight."""
    buttons = phone.evaluate(BUTTONS, too_large)
    if not buttons:
        screen.drawn(phone)
        return
    (spot,) = dice.choices(buttons, [each["often"] for each in buttons])
    again = time.monotonic() + GAP_S[0] + (GAP_S[1] - GAP_S[0]) * dice.random() ** 3
    phone.touchscreen.tap(spot["x"], spot["y"])
    # Time itself: between two fingers it passes for the browser, whose own clock no test sets.
    time.sleep(max(0, again - time.monotonic()))
    phone.touchscreen.tap(spot["x"], spot["y"])


def doubles(phone: Page) -> int:
    """How many were double taps by the page's own clock, on however busy a machine."""
    downs = groupby(phone.evaluate("seen.downs"), itemgetter(0))
    times = [[at for _, at in each] for _, each in downs]
    return sum(len(each) == 2 and each[1] - each[0] < SHOWN_MS for each in times)


def answers(written: Iterable[Mapping[str, Any]]) -> list[Mapping[str, Any]]:
    """One touch says of several instruments that they are whole: that is one answer as long as each is named once."""
    answered: list[Mapping[str, Any]] = []
    named: set[str] = set()
    for each in written:
        whole = each["payload"].get("found") == "whole" and each["payload"]["instrument"] not in named
        if not (whole and named):
            answered.append(each)
        if whole:
            named.add(each["payload"]["instrument"])
    return answered


def at_the_chair(demo: Mapping[str, Any], phone: Page, laptop: Page, alias: str) -> str:
    """A tooth with two canals, watched; returns the case's id."""
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = approved_case(demo, phone, laptop, alias, tooth="14")
    phone.add_init_script(WATCH)
    phone.goto(f"/cases/{case}/chair")
    expect(screen.answers(phone)).to_be_visible()
    return case


def test_no_tap_answers_what_was_not_yet_seen(open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]) -> None:
    print(f"\ndouble taps: seed {SEED}")  # noqa: T201
    dice = random.Random(SEED)  # noqa: S311
    phone, laptop = open_phone(), open_laptop()
    case = at_the_chair(demo, phone, laptop, "Bench 401")

    began, tried, finished, plan = time.monotonic(), 0, False, ""
    too_large: Sequence[str] = ()
    while not finished or tried < DOUBLE_TAPS or doubles(phone) < DOUBLE_TAPS:
        treatment = status(laptop, case)
        if treatment["course"]["plan_hash"] != plan:
            plan, too_large = treatment["course"]["plan_hash"], above_the_final(phone, case)
        finished = let_go_on(phone, laptop, case, treatment)
        for _ in range(10):
            tap_twice(phone, dice, too_large)
        tried += 10
        assert finished or tried < 3 * DOUBLE_TAPS, f"no canal was finished: {status(laptop, case)['canals']}"
        # On a busy machine two taps in a row are often too far apart to be a double one.
        assert tried < 9 * DOUBLE_TAPS, f"only {doubles(phone)} double taps"
    expect(phone.get_by_text("not sent yet")).to_have_count(0)

    written = {each["id"]: each for each in phone.evaluate("seen.written")}
    every = events(phone, case)
    stored = [each for each in every if each["id"] in written]
    kinds = Counter(each["payload"]["kind"] for each in stored)
    print(f"double taps: {doubles(phone)}, {len(stored)} events, {time.monotonic() - began:.0f} s, {kinds}")  # noqa: T201
    assert len(stored) == len(written) > 50
    # Each was asked to be written in a touch; only of several instruments one touch says several things, one by one.
    assert {each["payload"]["kind"] for each in written.values() if each["goes_on"]} <= {"inspected"}
    # Nothing was answered that had not been in sight.
    assert [each for each in written.values() if each["shown_ms"] < SHOWN_MS] == []
    # One answer to a double tap.
    for _, of_one in groupby(written.values(), itemgetter("double")):
        assert [pair for pair in pairwise(answers(of_one)) if pair[1]["at"] - pair[0]["at"] < SHOWN_MS] == []
    # What was written is of the canal that the finger saw.
    steps = [each for each in written.values() if each["payload"]["kind"] == "step"]
    assert all(each["asked"].startswith(f"{each['canal']} / ") for each in steps)
    # All of it was due when it was tapped; what another device said before it came in may stand in its way.
    places = {each["id"]: each["position"] for each in status(phone, case)["events"]}
    others = [place for event_id, place in places.items() if event_id not in written]
    for event_id in status(phone, case)["course"]["out_of_course"]:
        assert any(written[event_id]["seen_position"] < place < places[event_id] for place in others), written[event_id]


def test_what_is_written_late_is_of_its_own_touch(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    """A touch that is always taken, on a problem, may come before what the touch before it said is written."""
    phone = open_phone()
    at_the_chair(demo, phone, open_laptop(), "Bench 402")
    here = screen.where(phone).locator("b").inner_text()
    named = screen.other_canals(phone).get_attribute("aria-label") or ""
    (there, *_) = named.removeprefix("Other canals: ").split()
    phone.evaluate(KEEP_STORE_BUSY)
    screen.turn(phone, there)
    phone.get_by_role("button", name="Problem", exact=True).tap()
    expect(phone.get_by_role("dialog")).to_be_visible()
    assert phone.evaluate("seen.written") == []

    phone.evaluate("leaveOff()")
    phone.wait_for_function("() => seen.written.length > 0")
    (turn,) = phone.evaluate("seen.written")
    assert (turn["payload"]["kind"], turn["canal"], turn["goes_on"]) == ("turn", there, False)
    assert turn["asked"].startswith(f"{here} / ")
    assert turn["shown_ms"] >= SHOWN_MS
