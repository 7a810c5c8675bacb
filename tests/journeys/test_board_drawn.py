"""Six canals on the narrowest phone, over many plans: no label lies over another, and each number is told once.

The judge of numbers is the planner's answer; of places, the browser's own boxes.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping
from itertools import combinations
from typing import Any

from playwright.sync_api import Page, Route, expect

from planning.contract.plan_input import CanalInput, Choices, Junction, Pattern, PlanInput, RootInput
from planning.contract.tooth_facts import Anatomy
from planning.foundation.encoding import encode
from planning.lengths.readings import ApexLocator, ConfirmingImage, PreOperativeImage, Reading
from planning.techniques.files import provided_techniques
from planning.techniques.technique import Setting
from planning.whole_tooth.plan import plan
from tests.draws import draws
from tests.journeys import hands
from tests.journeys.conftest import Opens
from tests.journeys.records import opened, send
from tests.planning.given import OPEN_30, technique
from tests.planning.test_agrees_with_itself import KIT

Json = dict[str, Any]
NARROW = {"width": 320, "height": 568}
ROOTS = {"MB1": "MB", "MB2": "MB", "MB3": "MB", "DB": "DB", "DB2": "DB", "P": "P"}
WHOLE, SHARE, SEED = 200, 50, 320
# A box is higher than its letters: of each label the place that its letters take.
LABELS = """(board) => {
  const pen = document.createElement('canvas').getContext('2d');
  return [...board.querySelectorAll('text, tspan, [data-drawn=sign]')]
    .filter((label) => label.children.length === 0)
    .map((label) => {
      const says = label.textContent, box = label.getBoundingClientRect(), style = getComputedStyle(label);
      pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
      const { fontBoundingBoxAscent: up, fontBoundingBoxDescent: down } = pen.measureText(says);
      const line = box.top + (box.height * up) / (up + down);
      const { actualBoundingBoxAscent: top, actualBoundingBoxDescent: bottom } = pen.measureText(says);
      return { says, left: box.left, right: box.right, top: line - top, bottom: line + bottom };
    });
}"""
STOPS = """(rows) => rows.map((row) =>
  row.lastElementChild.textContent.match(/[0-9]+[.][0-9]/)[0])"""


def read(rng: random.Random, point: str) -> tuple[Reading, ...]:
    """An estimate alone, a length that is settled, or readings that disagree."""
    tooth_mm = rng.randrange(32, 52) / 2
    estimate = PreOperativeImage(tooth_mm=tooth_mm, reference_point=point)
    confirmed = ConfirmingImage(set_mm=tooth_mm - 1, tip_short_mm=1.0, reference_point=point)
    apart_mm = rng.choice((0.8, 1.5))
    read_mm = tooth_mm - 1 + apart_mm
    located = ApexLocator(read_mm=read_mm, repeat_mm=read_mm, mark="constriction", stable=True, reference_point=point)
    return rng.choice(((estimate,), (estimate, confirmed), (confirmed, located)))


def drawn(number: int) -> Json:
    """A plan of six canals, by its number."""
    rng = random.Random(f"{SEED} {number}")  # noqa: S311  # nothing secret
    joins = rng.random() < 0.5
    canals = tuple(
        CanalInput(
            name=name,
            root=root,
            reference_point=f"{root} cusp",
            readings=read(rng, f"{root} cusp"),
            curvature_deg=rng.choice((None, 15.0, 40.0)),
            junction=Junction(from_terminus_mm=rng.choice((2.0, 3.5)), method="cone_mark")
            if joins and name in ("MB2", "MB3")
            else None,
        )
        for name, root in ROOTS.items()
    )
    roots = (RootInput(name="MB", pattern=Pattern.JOIN, main_canal="MB1"),) if joins else ()
    shown: Json = encode(
        plan(
            PlanInput(
                tooth="26",
                setting=Setting.EXTRACTED,
                canals=canals,
                roots=roots,
                kit=KIT,
                technique=technique(rng.choice(sorted(provided_techniques()))),
                choices=Choices(needle=OPEN_30),
                anatomy=Anatomy.CHARTED_BY_SUPERVISOR,
            )
        )
    )
    return shown


def over_each_other(labels: list[Json]) -> Iterator[tuple[str, str]]:
    for label, other in combinations(labels, 2):
        apart = (
            label["right"] <= other["left"]
            or other["right"] <= label["left"]
            or label["bottom"] <= other["top"]
            or other["bottom"] <= label["top"]
        )
        if not apart:
            yield label["says"], other["says"]


def numbers_agree(page: Page, shown: Mapping[str, Any]) -> None:
    """Column, panel and list of stops of each canal, against the plan."""
    for canal in shown["canals"]:
        name = canal["canal"]
        panel = hands.select(page, name)
        length = panel.get_by_role("status", name="Length").inner_text()
        says = str(hands.column(page, name).get_attribute("aria-label"))
        assert f"ends at {length} mm" in says, (says, length)
        for number in length.replace("≈ ", "≈").replace("≠ ", "≠").split():
            assert number in page.locator("[data-drawn=end]").all_text_contents(), (name, number)
        of_plan = [
            f"{stop['stop_mm']:.1f}" for row in shown["stop_table"] for stop in row["stops"] if stop["canal"] == name
        ]
        assert panel.get_by_role("list", name=f"Stops in {name}").get_by_role("listitem").evaluate_all(STOPS) == of_plan
        if canal["length"]["state"] in ("settled", "estimated"):
            assert length.removeprefix("≈ ") == f"{canal['end_mm']:.1f}", (name, length)


def test_six_canals_on_the_narrowest_phone(open_phone: Opens, demo: Mapping[str, Any]) -> None:
    page = open_phone(viewport=NARROW)
    hands.sign_in(page, hands.person(demo, "student"))
    case = opened(page, "Bench 361", tooth="26")
    known = {canal["name"] for canal in case["canals"]}
    for name in [name for name in ROOTS if name not in known]:
        send(
            page,
            "POST",
            f"cases/{case['id']}/canals",
            {"name": name, "root": ROOTS[name], "reference_point": f"{ROOTS[name]} cusp"},
        )
    plans: list[Json] = []
    page.route("**/preview", lambda route: answered(route, plans))
    for number in range(draws(WHOLE, SHARE)):
        plans[:] = [drawn(number)]
        page.goto(f"/cases/{case['id']}/plan")
        board = page.get_by_role("img", name="Depth board")
        expect(board).to_be_visible()
        labels = board.evaluate(LABELS)
        assert len(labels) > 2 * len(ROOTS)
        assert list(over_each_other(labels)) == [], number
        assert max(label["right"] for label in labels) <= NARROW["width"], number
        numbers_agree(page, plans[0])


def answered(route: Route, plans: list[Json]) -> None:
    route.fulfill(json=plans[0])
