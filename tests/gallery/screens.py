"""The screens, each with how it is brought about and what has to be seen before its picture is taken."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from playwright.sync_api import Page, Route, expect

from tests.gallery.cases import Cases
from tests.journeys import screen
from tests.journeys.hands import unfold

Role = Literal["alert", "application", "button", "heading", "link", "radiogroup", "region"]
LISTS = "**/api/v1/programmes/*/cases*"


@dataclass(frozen=True, slots=True)
class Screen:
    name: str
    role: str
    """Who looks at it; empty where nobody has signed in."""
    show: Callable[[Page, Cases], None]


def heading(page: Page, name: str) -> None:
    expect(page.get_by_role("heading", name=name)).to_be_visible()


def at(path: str, seen: str, role: Role | None = None) -> Callable[[Page, Cases], None]:
    """An address of the app, its cases by their names in braces, and a word of what it shows."""

    def show(page: Page, cases: Cases) -> None:
        page.goto(path.format(cases=cases))
        element = page.get_by_role(role, name=seen) if role else page.get_by_text(seen)
        expect(element.first).to_be_visible()
        page.wait_for_load_state("networkidle")

    return show


def nobody(page: Page, cases: Cases) -> None:
    page.goto("/")
    expect(page.get_by_role("button", name="Sign in")).to_be_visible()


def empty(page: Page, cases: Cases) -> None:
    def nothing(route: Route) -> None:
        answer = route.fetch()
        route.fulfill(response=answer, json={**answer.json(), "results": []})

    page.route(LISTS, nothing)
    page.goto("/cases")
    page.wait_for_load_state("networkidle")
    page.reload(wait_until="networkidle")


def offline(page: Page, cases: Cases) -> None:
    page.goto(f"/cases/{cases.step}/chair")
    expect(screen.where(page)).to_be_visible()
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    page.wait_for_load_state("networkidle")
    page.context.set_offline(True)
    page.reload()
    expect(screen.where(page)).to_be_visible()


def plan(*folds: str) -> Callable[[Page, Cases], None]:
    def show(page: Page, cases: Cases) -> None:
        page.goto(f"/cases/{cases.step}")
        expect(page.get_by_role("img", name="Depth board")).to_be_visible()
        for fold in folds:
            unfold(page, fold)
        page.wait_for_load_state("networkidle")

    return show


def stepped(page: Page, cases: Cases) -> None:
    plan()(page, cases)
    page.get_by_role("slider", name="Step through the work").fill("4")


def canal(page: Page, cases: Cases) -> None:
    of_mb = next(c for c in page.request.get(f"/api/v1/cases/{cases.charted}").json()["canals"] if c["name"] == "MB")
    page.goto(f"/cases/{cases.charted}/canals/{of_mb['id']}")
    heading(page, "Readings so far")
    page.wait_for_load_state("networkidle")


def pressed(case: str, button: str) -> Callable[[Page, Cases], None]:
    """A sheet of the chair."""

    def show(page: Page, cases: Cases) -> None:
        page.goto(f"/cases/{getattr(cases, case)}/chair")
        screen.dock(page).get_by_role("button", name=button).click()
        expect(page.get_by_role("dialog")).to_be_visible()

    return show


def why(page: Page, cases: Cases) -> None:
    plan("All stops")(page, cases)
    page.get_by_role("table").get_by_role("button").first.click()
    expect(page.get_by_role("dialog")).to_contain_text("Where it comes from")


def exercise(page: Page, cases: Cases) -> None:
    page.goto("/practice")
    page.get_by_role("contentinfo").get_by_role("button").or_(page.get_by_role("link", name="Go on")).click()
    expect(page.get_by_role("button", name=re.compile("^(Say where|Work )"))).to_be_visible()


STUDENT, SUPERVISOR, COORDINATOR = "student", "supervisor", "coordinator"
SCREENS = (
    Screen("sign in", "", nobody),
    Screen("cases", STUDENT, at("/cases", "Gallery", "link")),
    Screen("cases none", STUDENT, empty),
    Screen("case new", STUDENT, at("/cases/new", "Open the case", "button")),
    Screen("case", STUDENT, at("/cases/{cases.charted}", "Canals", "radiogroup")),
    Screen("case not there", STUDENT, at("/cases/01900000-0000-7000-8000-000000000000", "Try again", "button")),
    Screen("canal", STUDENT, canal),
    Screen("plan", STUDENT, plan()),
    Screen("plan stepped", STUDENT, stepped),
    Screen("plan stops", STUDENT, plan("All stops")),
    Screen("plan cautions", STUDENT, plan("All cautions")),
    Screen("plan why", STUDENT, why),
    Screen("chair step", STUDENT, at("/cases/{cases.step}/chair", "Now in MB", "region")),
    Screen("chair depth", STUDENT, at("/cases/{cases.depth}/chair", "Now in MB", "region")),
    Screen("chair hold point", STUDENT, at("/cases/{cases.asked}/chair", "Waits for the supervisor")),
    Screen("chair problem", STUDENT, pressed("step", "Problem")),
    Screen("chair not sure", STUDENT, pressed("step", "Not sure")),
    Screen("chair halted", STUDENT, at("/cases/{cases.halted}/chair", "The tooth is halted", "alert")),
    Screen("chair may start", STUDENT, at("/cases/{cases.clinic}/chair", "May I start?", "region")),
    Screen("chair closed", STUDENT, at("/cases/{cases.closed}/chair", "Open again", "link")),
    Screen("chair offline", STUDENT, offline),
    Screen("visit close", STUDENT, at("/cases/{cases.step}/chair/close", "Close for today", "heading")),
    Screen("visit reopen", STUDENT, at("/cases/{cases.closed}/chair/reopen", "Open the visit", "button")),
    Screen("images", STUDENT, at("/cases/{cases.charted}/images", "Image", "application")),
    Screen("marks", STUDENT, at("/cases/{cases.charted}/images/{cases.image}", "Image", "application")),
    Screen("record", STUDENT, at("/cases/{cases.depth}/record", "Record of", "heading")),
    Screen("practice", STUDENT, at("/practice", "Levels", "heading")),
    Screen("practice begun", STUDENT, exercise),
    Screen("practice set", SUPERVISOR, at("/practice", "Set as a task", "button")),
    Screen("share", STUDENT, at("/share", "Nothing was shared")),
    Screen("account", STUDENT, at("/account", "Sign out", "button")),
    Screen("keys", STUDENT, at("/account/keys", "Make a key", "button")),
    Screen("people", COORDINATOR, at("/account/people", "In the programme", "heading")),
    Screen("join without a link", "", at("/join", "no whole link")),
    Screen("systems", COORDINATOR, at("/account/systems", "Other systems", "heading")),
    Screen("nothing here", STUDENT, at("/nowhere", "Nothing here", "heading")),
    Screen("worklist", SUPERVISOR, at("/worklist", "Waiting for you", "heading")),
    Screen("review", SUPERVISOR, at("/plans/{cases.submitted}", "Approve", "button")),
    Screen("sign-off", SUPERVISOR, at("/cases/{cases.asked}/sign-off/MB", "Approve", "button")),
    Screen("looking in", SUPERVISOR, at("/cases/{cases.depth}/chair", "You look in")),
    Screen("halted supervisor", SUPERVISOR, at("/cases/{cases.halted}/chair", "Let it go on", "button")),
    Screen("account supervisor", SUPERVISOR, at("/account", "Sign out", "button")),
)
