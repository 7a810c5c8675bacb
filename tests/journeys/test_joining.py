"""A coordinator takes in a list and hands a link out; whoever has it joins on a small phone, and is ended again."""

from __future__ import annotations

from typing import Any

from playwright.sync_api import Page, Request, expect

from tests.journeys import hands
from tests.journeys.conftest import Opens

LIST = "name;user name;role;group\nNour Amin;nour;student;Tuesday bench\nAda;ada;studnt;\n"
PASSWORD = "four words of mine"


def fits(page: Page) -> None:
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "runs out of the screen"


def invited(page: Page) -> str:
    """The link of the one person of the list who can be invited."""
    page.get_by_role("button", name="Take in a list").click()
    page.get_by_label("The list (CSV)").set_input_files(
        {"name": "class.csv", "mimeType": "text/csv", "buffer": LIST.encode()}
    )
    expect(page.get_by_text("1 to invite, 1 to put right")).to_be_visible()
    expect(page.get_by_text("Line 3: has to be put right")).to_be_visible()
    expect(page.get_by_text("'studnt' is no role")).to_be_visible()
    fits(page)
    page.get_by_role("button", name="Invite 1").click()
    links = page.get_by_role("region", name="Links to hand out")
    expect(links.get_by_role("heading", name="Nour Amin")).to_be_visible()
    fits(page)
    return links.locator("code").inner_text()


def joined(phone: Page, link: str) -> None:
    phone.goto(link)
    expect(phone.get_by_text("You are Nour Amin.")).to_be_visible()
    expect(phone.get_by_text("As a student, in Tuesday bench.")).to_be_visible()
    fits(phone)
    phone.get_by_label("Choose a password").fill("nour")
    phone.get_by_role("button", name="Join").click()
    expect(phone.get_by_text("too short")).to_be_visible()
    phone.get_by_label("Choose a password").fill(PASSWORD)
    phone.get_by_role("button", name="Join").click()
    phone.get_by_role("button", name="Understood").click()
    expect(phone.get_by_role("link", name="New case")).to_be_visible()


def test_somebody_joins_by_a_link_and_is_ended(demo: dict[str, Any], open_phone: Opens, open_laptop: Opens) -> None:
    laptop, phone = open_laptop(), open_phone()
    hands.sign_in(laptop, hands.person(demo, "coordinator"))
    laptop.goto("/account")
    laptop.get_by_role("link", name="People").click()
    link = invited(laptop)
    secret = link.partition("/join#")[2]
    assert secret

    asked: list[Request] = []
    phone.on("request", lambda request: asked.append(request))
    joined(phone, link)
    # A browser names a request with what stands after the # of its page; what it sends has none of it.
    sent = [each.url.partition("#")[0] + str(each.headers) for each in asked]
    assert len(sent) > 3
    assert not [each for each in sent if secret in each]
    assert secret not in phone.url

    laptop.get_by_role("button", name="I have handed them out").click()
    laptop.reload()
    here = laptop.get_by_role("region", name="In the programme")
    here.get_by_label("Look for a name or a group").fill("nour")
    here.get_by_role("button", name="Change Nour Amin").click()
    fits(laptop)
    here.get_by_role("button", name="End it for Nour Amin").click()
    here.get_by_role("button", name="End it now").click()
    expect(here.get_by_text("Nobody like that.")).to_be_visible()
    programmes = phone.request.get("/api/v1/session").json()["memberships"]
    assert programmes == []
    phone.goto(link)
    expect(phone.get_by_text("This link was used.")).to_be_visible()
