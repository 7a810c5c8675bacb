"""The main screens, light and dark: nothing runs out of the screen. The README's pictures where they are asked for."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.journeys import hands, marking, records, screen
from tests.journeys.conftest import Opens, Scheme

PICTURES = Path(__file__).resolve().parents[2] / "frontend" / "pictures"
SCHEMES: tuple[Scheme, Scheme] = ("light", "dark")


def picture(page: Page, name: str) -> None:
    """Kept only where asked for: an ordinary run changes no file."""
    page.evaluate("document.fonts.ready.then(() => true)")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), f"{name} runs out of the screen"
    if os.environ.get("FOURTH_CANAL_PICTURES"):
        PICTURES.mkdir(exist_ok=True)
        page.screenshot(path=PICTURES / f"{name}.png")


@pytest.mark.parametrize("scheme", SCHEMES)
def test_the_students_screens(demo: dict[str, Any], open_phone: Opens, scheme: Scheme) -> None:
    page = open_phone(scheme=scheme, device_scale_factor=1.5)
    hands.sign_in(page, hands.person(demo, "student"))
    expect(page.get_by_role("link", name="Bench tooth A2")).to_be_visible()
    picture(page, f"cases-{scheme}")
    page.get_by_role("link", name="Bench tooth A2").click()
    hands.to_canal(page, "MB2")
    picture(page, f"canal-{scheme}")
    hands.back(page)
    hands.to_plan(page)
    page.get_by_role("slider", name="Step through the work").fill("6")
    page.get_by_role("status", name="What is expected").evaluate("element => element.scrollIntoView()")
    picture(page, f"depths-{scheme}")
    hands.unfold(page, "All stops")
    expect(page.get_by_role("table")).to_be_visible()
    picture(page, f"stops-{scheme}")
    hands.unfold(page, "At the tray")
    picture(page, f"order-{scheme}")


@pytest.mark.parametrize("scheme", SCHEMES)
def test_the_chairs_screens(
    demo: dict[str, Any], open_phone: Opens, laptop: Page, tmp_path: Path, scheme: Scheme
) -> None:
    """A step of the work, and an image that is measured."""
    page = open_phone(scheme=scheme, device_scale_factor=1.5)
    hands.sign_in(page, hands.person(demo, "student"))
    hands.sign_in(laptop, hands.person(demo, "supervisor"))
    case = records.approved_case(demo, page, laptop, f"Picture {scheme}")
    records.to_the_glide_path(page, laptop, case, "MB")
    page.goto(f"/cases/{case}/chair")
    expect(screen.where(page)).to_contain_text("Glide path")
    # Just after a step the answers take no touch for a moment, and look so.
    expect(screen.answers(page).get_by_role("button").first).to_be_enabled()
    picture(page, f"chair-{scheme}")

    page.goto(f"/cases/{case}")
    marking.add_image(page, marking.DRAWN.png(tmp_path / "drawn.png"))
    page.get_by_role("link", name="Mark and measure").tap()
    marking.mark_instrument(page, marking.DRAWN, marking.MB, 18)
    marking.measure(page, marking.DRAWN, marking.MB)
    picture(page, f"marks-{scheme}")


def test_the_supervisors_screen(demo: dict[str, Any], phone: Page, open_laptop: Opens) -> None:
    hands.sign_in(phone, hands.person(demo, "student"))
    phone.get_by_role("link", name="Bench tooth A1").click()
    hands.to_plan(phone)
    hands.select(phone, "D")
    phone.get_by_role("button", name="D: one size larger").click()
    phone.get_by_role("button", name="Ask for approval again").click()
    expect(phone.get_by_role("button", name="Withdraw the request")).to_be_visible()
    for scheme in SCHEMES:
        page = open_laptop(scheme=scheme)
        hands.sign_in(page, hands.person(demo, "supervisor"))
        page.get_by_role("link", name="Bench tooth A1 · plan 2").click()
        expect(page.get_by_text("dotted: the version before")).to_be_visible()
        picture(page, f"review-{scheme}")
