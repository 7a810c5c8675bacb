"""Every screen of the gallery, for who sees it, hears it or reads it large: no violation of axe's rules, nothing that
runs out of the screen, no text cut off or over another; also with texts as long as another language makes them.

The judge of access is axe-core; of places, the browser's own boxes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import product
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, ViewportSize

from tests.draws import WHOLE
from tests.gallery.cases import Cases, opened
from tests.gallery.screens import SCREENS
from tests.journeys.conftest import LAPTOP, PHONE, SHORT_PHONE, Opens, Scheme
from tests.journeys.hands import person, sign_in
from tests.journeys.screen import drawn
from tests.journeys.test_what_is_asked import EVERYTHING, TOO_WIDE

SCHEMES: tuple[Scheme, ...] = ("light", "dark")
SIZES: tuple[ViewportSize, ...] = (SHORT_PHONE, PHONE, LAPTOP)
EACH = tuple(product(SIZES, SCHEMES))
# WCAG 2.2, 1.4.4: text can be made twice as large.
LARGE = "document.documentElement.style.fontSize = '200%'"
# About as much as German or Finnish needs more than English (from memory); accents above and below the line.
LONG = """() => {
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  const accents = { a: 'á', e: 'é', i: 'í', o: 'ö', u: 'ü', y: 'ÿ', A: 'Å', E: 'É', O: 'Ö', U: 'Ü' }
  for (let text = walker.nextNode(); text; text = walker.nextNode()) {
    if (!/[a-z]{3}/.test(text.data) || text.parentElement.closest('svg, script, style')) continue
    const more = text.data.length * 0.4
    text.data = text.data.replace(/[aeiouyAEOU]/g, (letter) => accents[letter]) + 'ñ '.repeat(more / 2)
  }
}"""
CUT_OFF = """all => all.filter(each => each.checkVisibility() && each.innerText?.trim() && !each.closest('svg'))
.filter(each => ['hidden', 'clip'].includes(getComputedStyle(each).overflowX))
// What is there to be heard alone is a point of one pixel.
.filter(each => each.clientWidth > 1 && each.scrollWidth > each.clientWidth + 1)
.map(each => each.outerHTML.slice(0, 120))"""
OVER_ANOTHER = """() => {
  const IN_SIGHT = ['sticky', 'fixed', 'absolute']
  const stays = (each) => each && (IN_SIGHT.includes(getComputedStyle(each).position) || stays(each.parentElement))
  const walker = document.createTreeWalker(document.querySelector('main') ?? document.body, NodeFilter.SHOW_TEXT)
  const lines = []
  for (let text = walker.nextNode(); text; text = walker.nextNode()) {
    const within = text.parentElement
    if (!text.data.trim() || within.closest('svg, dialog') || !within.checkVisibility()) continue
    // What stays in sight lies over the rest by intent.
    if (stays(within)) continue
    const range = document.createRange()
    range.selectNodeContents(text)
    for (const { left, right, top, bottom, height } of range.getClientRects())
      // A line is higher than its letters.
      lines.push({ says: text.data.trim(), left, right, top: top + height / 4, bottom: bottom - height / 4 })
  }
  return lines.flatMap((line, at) => lines.slice(at + 1)
    .filter(other => line.says !== other.says && line.left + 1 < other.right && other.left + 1 < line.right
      && line.top < other.bottom && other.top < line.bottom)
    .map(other => `${line.says} / ${other.says}`))
}"""
Faults = dict[str, list[Any]]


@pytest.fixture
def cases(open_phone: Opens, demo: Mapping[str, Any], tmp_path: Path) -> Cases:
    student, supervisor = open_phone(), open_phone()
    sign_in(student, person(demo, "student"))
    sign_in(supervisor, person(demo, "supervisor"))
    return opened(demo, student, supervisor, tmp_path)


def test_every_screen_can_be_seen_heard_and_read_large(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any], cases: Cases
) -> None:
    """In the gate each screen once, in turn in every size and scheme; with DRAWS=whole in all of them."""
    faults: Faults = {}
    for number, screen in enumerate(SCREENS):
        for size, scheme in EACH if WHOLE else (EACH[number % len(EACH)],):
            opens = open_laptop if size is LAPTOP else open_phone
            page = opens(viewport=size, scheme=scheme)
            if screen.role:
                sign_in(page, person(demo, screen.role))
            screen.show(page, cases)
            faults |= {
                f"{screen.name}, {size['width']} px, {scheme}, {what}": places for what, places in wrong(page) if places
            }
            page.close()
    assert not faults, "\n".join(f"{where}: {each}" for where, each in faults.items())


def wrong(page: Page) -> Iterator[tuple[str, list[Any]]]:
    violations = Axe().run(page).response["violations"]
    yield "access", [(each["id"], [node["html"][:120] for node in each["nodes"]]) for each in violations]
    yield from out_of_place(page, "")
    page.evaluate(LARGE)
    yield from out_of_place(page, "text twice as large: ")
    page.evaluate("document.documentElement.style.fontSize = ''")
    page.evaluate(LONG)
    yield from out_of_place(page, "long words: ")


def out_of_place(page: Page, how: str) -> Iterator[tuple[str, list[Any]]]:
    drawn(page)
    everything = page.locator(f"{EVERYTHING}:not([data-drawn=magnified])")
    yield f"{how}out of the screen", everything.evaluate_all(TOO_WIDE)
    yield f"{how}cut off", everything.evaluate_all(CUT_OFF)
    yield f"{how}over another", page.evaluate(OVER_ANOTHER)
