"""A coordinator lets another system in; it opens a case for a student, who finds it; then the key is revoked."""

from __future__ import annotations

import json
import urllib.error
import urllib.request
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.journeys import hands
from tests.journeys.conftest import PHONE, TALL_PHONE, Opens, Scheme


def ask(url: str, key: str, body: dict[str, Any] | None = None) -> tuple[int, Any]:
    """Status and body of an answer, asked for as a program does: without a cookie."""
    sent = None if body is None else json.dumps(body).encode()
    headers = {"Authorization": f"Bearer {key}", "Content-Type": "application/json"}
    try:
        with urllib.request.urlopen(urllib.request.Request(url, sent, headers)) as answer:  # noqa: S310 - our own server
            return answer.status, json.load(answer)
    except urllib.error.HTTPError as refusal:
        return refusal.code, json.load(refusal)


def make_key(phone: Page, name: str, password: str) -> str:
    """The text of a service's key, read off the screen."""
    services = phone.get_by_role("region", name="Services of the programme")
    services.get_by_role("button", name="Make a key").click()
    services.get_by_label("Name of the service").fill(name)
    for scope in ("see cases, plans and what was done", "open cases and chart them", "see who belongs"):
        services.get_by_label(scope).check()
    hands.choose(phone, "30 days")
    services.get_by_label("Your password, once more").fill(password)
    assert phone.evaluate("document.documentElement.scrollWidth <= innerWidth"), "runs out of the screen"
    services.get_by_role("button", name="Make a key").click()
    expect(services.get_by_text("Shown this once")).to_be_visible()
    text = services.locator("code").inner_text()
    assert phone.evaluate("document.documentElement.scrollWidth <= innerWidth"), "the key runs out of the screen"
    return text


@pytest.mark.parametrize(("scheme", "viewport"), [("light", PHONE), ("dark", TALL_PHONE)])
def test_a_system_opens_a_case_for_a_student(
    demo: dict[str, Any], open_phone: Opens, scheme: Scheme, viewport: Any
) -> None:
    phone = open_phone(scheme=scheme, viewport=viewport)
    name, alias = f"Archive in {scheme}", f"Heron {len(scheme)}"
    keeper = hands.person(demo, "coordinator")
    hands.sign_in(phone, keeper)
    phone.goto("/account")
    phone.get_by_role("link", name="Keys for programs").click()
    key = make_key(phone, name, keeper["password"])
    phone.context.grant_permissions(["clipboard-read", "clipboard-write"])
    phone.get_by_role("button", name="Copy the key").click()
    expect(phone.get_by_role("button", name="Copied")).to_be_visible()
    assert phone.evaluate("navigator.clipboard.readText()") == key
    phone.get_by_role("button", name="I have it").click()
    expect(phone.get_by_text(key)).to_have_count(0)
    expect(phone.get_by_role("heading", name=name)).to_be_visible()

    api = f"{demo['url']}/api/v1"
    programme = ask(f"{api}/key", key)[1]["programmes"][0]["id"]
    people = ask(f"{api}/programmes/{programme}/people", key)[1]["results"]
    who = hands.person(demo, "student")
    student = next(each["person"]["id"] for each in people if each["person"]["name"] == who["name"])
    tooth = {"notation": "iso_3950", "designation": "24"}
    case = {"patient_alias": alias, "tooth": tooth, "setting": "extracted", "student_id": student}
    status, opened = ask(f"{api}/programmes/{programme}/cases", key, case)
    assert (status, opened["student"]["name"]) == (201, who["name"])

    student_phone = open_phone(scheme=scheme, viewport=viewport)
    hands.sign_in(student_phone, who)
    student_phone.get_by_role("link", name=alias).click()
    expect(student_phone.get_by_role("heading", level=1, name=alias)).to_be_visible()
    student_phone.goto(f"/cases/{opened['id']}/record")
    expect(student_phone.get_by_text(f"Entered by {name} for {who['name']}")).to_be_visible()

    phone.reload()
    expect(phone.get_by_text("last used")).not_to_have_count(0)
    phone.get_by_role("button", name=f"Revoke {name}").click()
    phone.get_by_role("button", name="Revoke it for good").click()
    expect(phone.get_by_role("heading", name=name)).to_have_count(0)
    assert ask(f"{api}/key", key)[0] == 401


def test_a_student_makes_a_key_for_a_script_of_theirs(demo: dict[str, Any], open_phone: Opens) -> None:
    phone = open_phone()
    who = hands.person(demo, "student")
    hands.sign_in(phone, who)
    phone.goto("/account/keys")
    expect(phone.get_by_role("region", name="Services of the programme")).to_have_count(0)
    phone.get_by_role("button", name="Make a key").click()
    phone.get_by_label("What it is for").fill("Nightly copy")
    phone.get_by_label("see cases, plans and what was done").check()
    phone.get_by_label("Your password, once more").fill("not-this-one")
    phone.get_by_role("button", name="Make a key").click()
    expect(phone.get_by_text("This is not your password.")).to_be_visible()
    phone.get_by_label("Your password, once more").fill(who["password"])
    phone.get_by_role("button", name="Make a key").click()
    key = phone.locator("code").inner_text()
    assert ask(f"{demo['url']}/api/v1/key", key)[1]["person"]["name"] == who["name"]
