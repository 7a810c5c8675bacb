"""The same number on every screen that tells it: case, stops, review, chair, record. The plan is the judge."""

from __future__ import annotations

import copy
from collections.abc import Iterator, Mapping
from typing import Any

from playwright.sync_api import Locator, Page, expect

from tests.journeys import hands, screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import person, sign_in
from tests.journeys.records import approved_case, plan_of
from tests.planning.claims import Claim, claims, disagreements

Json = dict[str, Any]

# The numbers of the stop table, column by column; the row that says how deep a needle may ever go by itself.
STOPS = """() => {
  const table = document.querySelector('table:has([data-drawn=needle])')
  const heads = [...table.querySelectorAll('thead th')].map((th) => th.textContent.trim())
  const numbers = (rows) => Object.fromEntries(heads.slice(1).map((head, at) => [head, rows.flatMap((row) => {
    const cells = [...row.querySelectorAll('td')]
    return cells.length ? cells[at].textContent.match(/[0-9]+[.][0-9]/g) ?? [] : []
  })]))
  const of = (all) => [...table.querySelectorAll(all)]
  const [ceiling] = of('[data-drawn=needle] tr')
  return { heads, stops: numbers(of('tbody:not([data-drawn=needle]) tr')), needle: numbers([ceiling]) }
}"""


def texts(all_: Locator) -> dict[str, str]:
    """What each of them says, by the canal that it names first."""
    expect(all_.first).to_be_visible()
    texts_of = {}
    for text in all_.all_inner_texts():
        canal, _, says = " ".join(text.split()).partition(" ")
        texts_of[canal] = says
    return texts_of


def length_of(page: Page, canal: str) -> str:
    """As its column, its panel and the sentence for who does not see say it: one number."""
    panel = hands.select(page, canal).get_by_role("status", name="Length").inner_text()
    assert panel in str(hands.column(page, canal).get_attribute("aria-label"))
    assert panel in page.locator("[data-drawn=end]").all_text_contents()
    return panel


def screens(phone: Page, laptop: Page, case: str, version: str) -> Json:
    """What the screens say of the canals."""
    phone.goto(f"/cases/{case}")
    columns = phone.get_by_role("radiogroup", name="Canals").get_by_role("radio")
    expect(columns.first).to_be_attached()
    names = [str(column.get_attribute("aria-label")).split(":")[0] for column in columns.all()]
    seen: Json = {"case": {name: length_of(phone, name) for name in names}}
    phone.goto(f"/cases/{case}/chair")
    expect(screen.stop(phone)).to_be_visible()
    seen["chair"] = {}
    first = screen.where(phone).locator("b").inner_text()
    named = (screen.other_canals(phone).get_attribute("aria-label") or "").removeprefix("Other canals: ")
    seen["chair"][first] = screen.stop(phone).inner_text()
    for canal in (each.split()[0] for each in named.split(", ")):
        screen.turn(phone, canal)
        seen["chair"][canal] = screen.stop(phone).inner_text()
    laptop.goto(f"/plans/{version}")
    seen["review"] = {
        name: f"{hands.column(laptop, name).get_attribute('aria-label')} {hands.select(laptop, name).inner_text()}"
        for name in names
    }
    hands.unfold(laptop, "All stops")
    expect(laptop.locator("[data-drawn=needle]")).to_be_visible()
    seen["table"] = laptop.evaluate(STOPS)
    laptop.goto(f"/cases/{case}/record")
    lengths = laptop.get_by_role("group").filter(has=laptop.get_by_role("heading", name="Lengths and sizes"))
    lengths.get_by_role("heading").click()
    seen["record"] = texts(lengths.get_by_role("listitem"))
    return seen


def of_screens(plan: Json, seen: Json) -> Iterator[Claim]:
    yield from claims(plan)
    for canal in plan["canals"]:
        name, end = canal["canal"], f"{canal['end_mm']:.1f}"
        length, size = f"{canal['length']['stop_mm']:.1f}", f"{canal['final_size']}/.{canal['final_taper']:02d}"
        table = seen["table"]
        column = next(head for head in table["heads"] if head.startswith(name))
        stops = {
            f"{stop['stop_mm']:.1f}" for row in plan["stop_table"] for stop in row["stops"] if stop["canal"] == name
        }
        first = canal["run_sheet"]["nodes"][canal["run_sheet"]["start"]]
        for quantity, of_plan, places in (
            (
                "length",
                length,
                {"case": seen["case"][name], "record": _there(length, seen["record"][name])},
            ),
            ("end", end, {"review": _there(f"ends at {end}", seen["review"][name], end)}),
            ("size", size, {place: _there(size, seen[place][name]) for place in ("review", "record")}),
            ("first stop", f"{first['stop_um'] / 1000:.1f}", {"chair": seen["chair"][name]}),
            ("stops", sorted(stops), {"table": sorted(set(table["stops"][column]))}),
            ("needle", [f"{canal['needle']['ceiling_mm']:.1f}"], {"table": table["needle"][column]}),
        ):
            yield (f"{quantity} on screens", name), "plan", of_plan
            for place, value in places.items():
                yield (f"{quantity} on screens", name), place, value


def _there(what: str, text: str, value: str = "") -> str:
    return (value or what) if what in text else f"not in '{text}'"


def test_every_screen_tells_the_same(open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]) -> None:
    phone, laptop = open_phone(), open_laptop()
    sign_in(phone, person(demo, "student"))
    sign_in(laptop, person(demo, "supervisor"))
    case = approved_case(demo, phone, laptop, "Bench 251")
    version = phone.request.get(f"/api/v1/cases/{case}/plan-versions").json()["results"][0]["id"]
    plan = plan_of(phone, version)
    seen = screens(phone, laptop, case, version)
    assert disagreements(of_screens(plan, seen)) == {}
    # One screen that told otherwise would be found.
    for place, old, new in (("case", "19.0", "19.5"), ("chair", "19.0", "18.5"), ("review", "at 19.0", "at 18.0")):
        broken = copy.deepcopy(seen)
        name = plan["canals"][0]["canal"]
        broken[place][name] = broken[place][name].replace(old, new)
        assert len(disagreements(of_screens(plan, broken))) == 1, place
