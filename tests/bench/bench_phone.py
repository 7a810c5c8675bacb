"""What a phone four times slower takes: opening the app, every kind of touch, opening plans, opening things many times.

    python -m tests.bench.bench_phone

Starts a demonstration of its own; the app has been built. Bytes and requests are counted between browser and server;
what is opened is opened on a slow line, whose speed and way back the browser itself makes up (no time for connecting);
what is touched, on a line as fast as this machine. Each the least of a few, and their median.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from statistics import median
from typing import Any
from urllib.parse import urlsplit

import django
from playwright.sync_api import Browser, Page, sync_playwright

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")
django.setup()

from tests.bench.bench_drag import photo  # noqa: E402
from tests.bench.rows import Row, alone  # noqa: E402
from tests.bench.slow_phone import Opened, SlowPhone, Touched  # noqa: E402
from tests.journeys import screen  # noqa: E402
from tests.journeys.hands import choose, column, measures, person, sign_in, type_mm  # noqa: E402
from tests.journeys.marking import IMAGE, add_image, charted, chip, pane  # noqa: E402
from tests.journeys.records import approves, submitted_plan  # noqa: E402
from tests.journeys.relay import Relay, relay  # noqa: E402
from tests.journeys.running import FLAGS, chromium, running, unhurried  # noqa: E402

TIMES, OPENINGS = 3, 50
FIRST_SCREEN_KB, WHOLE_APP_KB = 90, 200
COLD_MS, AGAIN_MS, TOUCH_MS, TASK_MS = 2500, 1000, 100, 100
HEAP_GROWTH = 1.05

PASSWORD = "//input[@type='password']"
UNDERSTOOD = "//button[.='Understood']"
LINK = "//main//li//a"
BOARD = "//figure//*[@role='img']"
STEP = "//*[starts-with(@aria-label,'Now in ')]"
UNFOLDED = "//details[@open]/summary[starts-with(.,'{}')]"
PANEL = "//section[@aria-label='{}']"
CONTROLLED = "() => navigator.serviceWorker.controller !== null"


class Bench:
    """The demonstration, a student and a supervisor of it, a case at the chair and one whose plan waits."""

    def __init__(self, browser: Browser, demo: dict[str, Any], folder: Path) -> None:
        self.browser, self.demo, self.folder = browser, demo, folder
        self.student, self.supervisor = self._desk("student"), self._desk("supervisor")
        version = submitted_plan(self.student, "Bench 901", tooth="26")
        approves(self.supervisor, version)
        self.case = str(version["case_id"])
        self.waiting = str(submitted_plan(self.student, "Bench 902", tooth="26")["id"])
        self.marked = charted(self.student, "Bench 903")

    def _desk(self, role: str) -> Page:
        page = unhurried(self.browser.new_context(base_url=self.demo["url"]).new_page())
        sign_in(page, person(self.demo, role))
        return page

    def phone(self, who: Page | None = None) -> SlowPhone:
        return SlowPhone(self.browser, self.demo["url"], list(who.context.cookies()) if who else None)

    def ready(self, who: Page, path: str, want: str) -> SlowPhone:
        """A phone that was used before, at an address."""
        phone = self.phone(who)
        phone.opens(path, UNDERSTOOD)
        phone.page.get_by_role("button", name="Understood").tap()
        phone.page.wait_for_function(CONTROLLED)
        phone.opens(path, want)
        return phone


def rows() -> Iterator[Row]:
    with sync_playwright() as driver, tempfile.TemporaryDirectory() as folder, running(Path(folder)) as demo:
        browser = driver.chromium.launch(executable_path=chromium(), args=FLAGS)
        bench = Bench(browser, demo, Path(folder))
        for part in (line_rows, opening_rows, plan_rows, chair_rows, other_rows, heap_rows):
            yield from part(bench)
        browser.close()


def line_rows(bench: Bench) -> Iterator[Row]:
    """What goes over the line."""
    with relay(urlsplit(bench.demo["url"]).port or 80) as line:
        phone = SlowPhone(bench.browser, line.url, list(bench.student.context.cookies()))
        asked_by_page: set[str] = set()
        phone.page.on("request", lambda request: asked_by_page.add(urlsplit(request.url).path))
        phone.opens("/", UNDERSTOOD)
        phone.page.wait_for_function(CONTROLLED)
        screen_paths = {answer.path for answer in line.passed} & asked_by_page
        yield from _carried(line, "first screen", lambda path: path in screen_paths, FIRST_SCREEN_KB)
        yield from _carried(line, "the worker's install", lambda path: path not in screen_paths, None)
        yield from _carried(line, "whole app", lambda path: not path.startswith("/api/"), WHOLE_APP_KB)
        phone.page.get_by_role("button", name="Understood").tap()
        line.passed.clear()
        phone.opens("/", LINK)
        yield from _carried(line, "second visit", lambda path: True, None)
        phone.context.close()


def _carried(line: Relay, what: str, counts: Callable[[str], bool], goal: float | None) -> Iterator[Row]:
    passed = [answer for answer in line.passed if counts(answer.path)]
    yield Row(what=what, now=sum(answer.size_bytes for answer in passed) / 1000, against="kB", goal=goal)
    yield Row(what=f"{what}, requests", now=len(passed), against="requests")


def opening_rows(bench: Bench) -> Iterator[Row]:
    """An address typed in: never seen before, once more, and with no connection."""
    places = (
        ("sign-in", None, "/", PASSWORD),
        ("the cases", bench.student, "/", LINK),
        ("the worklist", bench.supervisor, "/", LINK),
        ("a plan", bench.student, f"/cases/{bench.case}/plan", BOARD),
        ("the chair", bench.student, f"/cases/{bench.case}/chair", STEP),
    )
    for name, who, path, want in places:
        visits = [_visits(bench.phone(who), path, want, UNDERSTOOD if who else want) for _ in range(TIMES)]
        for how, opened in zip(("cold", "again", "no connection"), zip(*visits, strict=True), strict=True):
            goal = COLD_MS if how == "cold" else AGAIN_MS
            yield _milliseconds(f"{name}, {how}", [each.shown_ms for each in opened], goal)


def _visits(phone: SlowPhone, path: str, want: str, first: str) -> tuple[Opened, Opened, Opened]:
    phone.on_slow_line()
    cold = phone.opens(path, first)
    phone.page.wait_for_function(CONTROLLED)
    if first != want:
        phone.touches(phone.page.get_by_role("button", name="Understood"), want)
    again = phone.opens(path, want)
    phone.context.set_offline(True)
    away = phone.opens(path, want)
    phone.context.close()
    return cold, again, away


def plan_rows(bench: Bench) -> Iterator[Row]:
    """A plan opened for the first time on this phone, as student and as supervisor, and what is folded
    in it; another canal selected."""
    student = (bench.student, "/cases", f"a[href='/cases/{bench.case}']")
    supervisor = (bench.supervisor, "/worklist", f"a[href='/plans/{bench.waiting}']")
    for name, (who, path, link) in (("student", student), ("supervisor", supervisor)):
        opened, tasks, folds, selected = [], [], [], []
        for _ in range(TIMES):
            phone = bench.ready(who, path, LINK)
            opened.append(phone.touches(phone.page.locator(link).last, BOARD))
            selected += [phone.touches(column(phone.page, canal), PANEL.format(canal)) for canal in ("DB", "P")]
            folds.append([phone.touches(_fold(phone, fold), UNFOLDED.format(fold)) for fold in FOLDS])
            phone.context.close()
            phone = bench.ready(who, path, LINK)
            tasks.append(phone.longest_task_ms(lambda: _open(phone, link)))  # noqa: B023  # done at once
            phone.context.close()
        yield _milliseconds(f"a plan opened by its {name}, touch drawn", [each.drawn_ms for each in opened], TOUCH_MS)
        yield _milliseconds(f"a plan opened by its {name}, longest task", tasks, TASK_MS)
        yield from _drawn(f"a canal selected by its {name}", selected)
        for fold, touched in zip(FOLDS, zip(*folds, strict=True), strict=True):
            yield from _drawn(f"{fold} to its {name}", list(touched))


FOLDS = ("All stops", "All cautions", "At the tray")


def _fold(phone: SlowPhone, name: str) -> Any:
    return phone.page.locator("summary").filter(has_text=name)


def _open(phone: SlowPhone, link: str) -> None:
    phone.page.locator(link).last.tap()
    phone.page.locator(BOARD).wait_for()


def chair_rows(bench: Bench) -> Iterator[Row]:
    """At the chair: answers step by step, the sheet of problems, turning to other canals."""
    phone = bench.ready(bench.student, f"/cases/{bench.case}/chair", STEP)
    page = phone.page
    answers = []
    for _ in range(TIMES):
        page.wait_for_timeout(600)  # a touch counts only once the step has been looked at
        # While it is written the answers are seen to be held up.
        answers.append(phone.touches(screen.answers(page).get_by_role("button").first, "//*[@aria-disabled='true']"))
    yield from _drawn("an answer at the chair", answers)
    problems, turns = [], []
    for canal in ("MB2", "DB", "P"):
        page.wait_for_timeout(600)
        problems.append(phone.touches(page.get_by_role("button", name="Problem"), "//dialog[@open]"))
        page.keyboard.press("Escape")
        page.wait_for_timeout(600)
        there = screen.canal_row(page, canal)
        page.wait_for_timeout(600)
        turns.append(phone.touches(there, f"//*[starts-with(@aria-label,'Now in {canal}')]"))
    yield from _drawn("the sheet of problems", problems)
    yield from _drawn("a turn to another canal", turns)
    phone.context.close()


def other_rows(bench: Bench) -> Iterator[Row]:
    """A number typed in, and marks on an image of twelve megapixels."""
    phone = bench.ready(bench.student, f"/cases/{bench.case}", LINK)
    page = phone.page
    page.locator("a[href*='/canals/']").first.tap()
    choose(measures(page), "Pre-operative image")
    field = page.get_by_role("textbox", name="Tooth on the image")
    typed = []
    for text in ("2", "20", "20.5"):
        field.tap()
        typed.append(phone.does(lambda: type_mm(page, "Tooth on the image", text), "//input"))  # noqa: B023
    yield from _drawn("a key", typed)
    phone.context.close()
    phone = bench.ready(bench.student, f"/cases/{bench.marked}", LINK)
    page = phone.page
    add_image(page, photo(bench.folder))
    page.get_by_role("link", name="Mark and measure").tap()
    page.locator(IMAGE).wait_for()
    chip(page, "MB").tap()
    box = pane(page).bounding_box()
    assert box is not None
    marks = []
    for number in range(TIMES):
        x, y = box["x"] + box["width"] * (0.4 + 0.03 * number), box["y"] + box["height"] * (0.2 + 0.1 * number)
        want = f"count(//*[@data-drawn='mark']) > {number}"
        marks.append(phone.does(lambda: page.touchscreen.tap(x, y), want))  # noqa: B023
        page.wait_for_timeout(600)  # two at once are one, of a wet glove
    yield from _drawn("a mark on an image", marks)
    phone.context.close()


def heap_rows(bench: Bench) -> Iterator[Row]:
    """What scripts hold after many openings of case, plan and chair, against after the first few."""
    phone = bench.ready(bench.student, f"/cases/{bench.case}", LINK)
    page, held = phone.page, []
    phone.line.send("Emulation.setCPUThrottlingRate", {"rate": 1})
    for number in range(OPENINGS):
        for link, want in ((f"/cases/{bench.case}/plan", BOARD), (f"/cases/{bench.case}/chair", STEP)):
            page.locator(f"a[href='{link}']").last.tap()
            page.locator(f"xpath={want}").first.wait_for()
            page.get_by_role("banner").get_by_role("link", name="Back").tap()
            page.locator(f"xpath={LINK}").first.wait_for()
        if number in (OPENINGS // 5, OPENINGS - 1):
            phone.quiet()
            held.append(phone.heap_kb())
    early, late = held
    yield Row(what=f"heap after {OPENINGS} openings", now=late / early, against="after a fifth", goal=HEAP_GROWTH)
    yield Row(what="the heap then", now=late, against="kB")
    phone.context.close()


def _drawn(what: str, touched: list[Touched]) -> Iterator[Row]:
    yield _milliseconds(f"{what}, touch drawn", [each.drawn_ms for each in touched], TOUCH_MS)


def _milliseconds(what: str, took: list[float], goal: float) -> Row:
    return Row(what=what, now=min(took), median=median(took), against="ms", goal=goal)


if __name__ == "__main__":
    alone("phone", rows())
