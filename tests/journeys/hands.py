"""What a person does with the app, as they would say it: sign in, open a case, take a reading."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from playwright.sync_api import Locator, Page, expect

Demo = Mapping[str, Any]
# Of who has signed in on this process's server.
_cookies: dict[str, list[Any]] = {}


def person(demo: Demo, role: str, number: int = 0) -> dict[str, str]:
    """The `number`th of the demonstration's people with this role."""
    person: dict[str, str] = [each for each in demo["sign_ins"] if each["role"] == role][number]
    return person


def type_sign_in(page: Page, who: Mapping[str, str]) -> None:
    page.get_by_label("User name").fill(who["username"])
    page.get_by_label("Password").fill(who["password"])
    page.get_by_role("button", name="Sign in").click()


def sign_in(page: Page, who: Mapping[str, str]) -> None:
    """To the first screen, the first notice read. Who has typed a password once is given the cookies of then."""
    signed_in = _cookies.get(who["username"])
    if signed_in:
        page.context.add_cookies(signed_in)
    page.goto("/")
    if not signed_in:
        type_sign_in(page, who)
    page.get_by_role("button", name="Understood").click()
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    if not signed_in:
        _cookies[who["username"]] = list(page.context.cookies())


def sign_out(page: Page) -> None:
    """Whoever signs in next types a password again."""
    page.get_by_role("link", name="You and this phone").click()
    page.get_by_role("button", name="Sign out").click()
    _cookies.clear()


def nobody_named(page: Page) -> None:
    """Looks at the picture that was just taken, before it is sent."""
    page.get_by_role("dialog", name="Before it is sent").get_by_role("button", name="No: send it").click()


def choose(page: Page | Locator, name: str) -> None:
    """One of a few that are all in sight."""
    page.get_by_role("radio", name=name, exact=True).check()


def agree(supervisor: Page) -> None:
    """Agrees to every canal of the plan on the screen that is still open."""
    chips = supervisor.get_by_role("group", name="Decide on each canal").get_by_role("button", name=": open")
    expect(chips.first).to_be_visible()
    for left in range(chips.count() - 1, -1, -1):
        chips.first.click()
        expect(chips).to_have_count(left)


def type_tooth(page: Page, tooth: str, notation: str) -> None:
    page.get_by_text("Type the tooth instead").click()
    choose(page, notation)
    page.get_by_label("Tooth", exact=True).fill(tooth)


def open_case(page: Page, alias: str, *, notation: str, tooth: str, means: str, setting: str) -> None:
    page.get_by_role("link", name="New case").click()
    page.get_by_label("Patient alias").fill(alias)
    type_tooth(page, tooth, notation)
    expect(page.get_by_text(means, exact=True)).to_be_visible()
    choose(page, setting)
    page.get_by_role("button", name="Open the case").click()
    expect(page.get_by_role("radiogroup", name="Canals")).to_be_visible()


def column(page: Page, canal: str) -> Locator:
    """Of the board."""
    return page.get_by_role("radiogroup", name="Canals").get_by_role("radio", name=re.compile(f"^{canal}:"))


def select(page: Page, canal: str) -> Locator:
    """The panel of a canal that was selected on the board."""
    column(page, canal).check()
    panel = page.get_by_role("region", name=canal, exact=True)
    expect(panel).to_be_visible()
    return panel


def to_canal(page: Page, canal: str) -> None:
    """To its readings and facts."""
    # A plan that is on its way takes the place of what is touched.
    page.wait_for_load_state("networkidle")
    select(page, canal).get_by_role("link", name=f"Readings and facts of {canal}").click()
    expect(page.get_by_role("heading", name="Readings so far")).to_be_visible()


def measures(page: Page) -> Locator:
    """The sheet that canals are measured in, opened where it is not."""
    sheet = page.get_by_role("dialog").filter(has=page.get_by_role("form", name="Add a reading"))
    if not sheet.is_visible():
        page.get_by_role("button", name=re.compile("^Measure")).click()
    return sheet


def type_mm(page: Page, label: str, value: str) -> None:
    page.get_by_role("textbox", name=label).fill(value)


def keep(page: Page) -> None:
    """The reading, and leaves the sheet."""
    sheet = measures(page)
    sheet.get_by_role("button", name="Keep", exact=True).click()
    expect(sheet.get_by_role("status").filter(has_text="kept")).to_be_attached()
    sheet.get_by_role("button", name="Close").click()
    expect(sheet).to_be_hidden()


def take_image(page: Page, *, tooth_mm: str) -> None:
    choose(measures(page), "Pre-operative image")
    type_mm(page, "Tooth on the image", tooth_mm)
    keep(page)


def confirm(page: Page, *, set_mm: str, short_mm: str) -> None:
    choose(measures(page), "Confirming image")
    type_mm(page, "Stop that was set", set_mm)
    choose(page, "short of the apex")
    type_mm(page, "By how much", short_mm)
    keep(page)


def length(page: Page, number: str) -> None:
    """The length of the selected canal, as it is written; an estimate is called one."""
    expect(page.get_by_role("status", name="Length", exact=True)).to_have_text(number)


def back(page: Page) -> None:
    page.get_by_role("banner").get_by_role("link", name="Back").click()


def stops(page: Page, row: str) -> list[str]:
    """The stops of one instrument, canal by canal; equal ones of one phase stand once for several instruments."""
    header = page.get_by_role("rowheader").filter(has_text=re.compile(f"^{re.escape(row)}$"))
    expect(header.first).to_be_visible()
    of_row, of_group = (
        page.get_by_role(place).filter(has=header).first.get_by_role("cell") for place in ("row", "rowgroup")
    )
    return (of_row if of_row.count() else of_group).all_inner_texts()


def to_plan(page: Page) -> None:
    """It comes by itself once every canal was measured."""
    expect(page.get_by_role("img", name="Depth board")).to_be_visible()


def unfold(page: Page, name: str) -> None:
    """What concerns the whole tooth, or the order of work in a canal."""
    page.locator("summary").filter(has_text=name).click()


def send(page: Page, method: str, path: str, body: Mapping[str, Any], **headers: str) -> Any:
    """As the person signed in on the page. What the server answers."""
    token = next(c["value"] for c in page.context.cookies() if c["name"] == "csrftoken")
    with_token = {"X-CSRFToken": token, **headers}
    answer = page.request.fetch(f"/api/v1/{path}", method=method, data=dict(body), headers=with_token, timeout=30_000)
    assert answer.ok, answer.text()
    return answer.json()
