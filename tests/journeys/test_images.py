"""Images at the chair: taken with no connection, kept through a restart, seen by the supervisor elsewhere."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

import pytest
from playwright.sync_api import FilePayload, Page, expect

from tests.cases.pictures import intra_oral, noise, picture, written
from tests.journeys import records, screen
from tests.journeys.conftest import Opens
from tests.journeys.hands import nobody_named, person, sign_in
from tests.journeys.marking import zoom_of
from tests.journeys.test_chair import answer, to_the_length

# Over one part of an upload, so that it goes in several.
PHOTO = FilePayload(name="IMG_1.jpg", mimeType="image/jpeg", buffer=noise(1200, 900, "JPEG"))


def take_photo(page: Page, photo: FilePayload = PHOTO) -> None:
    page.get_by_label("Take a photo").set_input_files([photo])
    nobody_named(page)


# A radiograph whose file says that words are part of the picture.
NAMED = FilePayload(
    name="named.dcm", mimeType="application/dicom", buffer=written(intra_oral(BurnedInAnnotation="YES"))
)


def drawn(page: Page) -> None:
    """The image is not only named: its pixels are on the screen."""
    page.wait_for_function(
        "() => [...document.querySelectorAll('[data-drawn=\"small image\"]')].some((i) => i.naturalWidth > 1)"
    )


def test_a_photo_taken_in_flight_mode_reaches_the_supervisor(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = to_the_length(phone, laptop, demo, "Bench 231")

    phone.context.set_offline(True)
    take_photo(phone)
    tile = phone.get_by_role("button", name=re.compile("^Open MB: length"))
    expect(tile).to_contain_text("on this phone")
    drawn(phone)
    answer(phone, "Image taken")
    expect(phone.get_by_text("Waits for the supervisor: length")).to_be_visible()
    phone.reload()
    expect(phone.get_by_text("Waits for the supervisor: length")).to_be_visible()
    expect(tile).to_contain_text("on this phone")
    drawn(phone)

    laptop.goto(f"/cases/{case}/chair")
    phone.context.set_offline(False)
    expect(tile).not_to_contain_text("on this phone", timeout=30_000)
    expect(phone.get_by_text("waits on this phone")).to_have_count(0)
    seen = laptop.get_by_role("button", name=re.compile("^Open MB: length"))
    seen.click(timeout=30_000)
    drawn(laptop)
    viewer = laptop.get_by_role("dialog")
    viewer.get_by_text("Brightness and contrast").click()
    viewer.get_by_label("Invert").check()
    image = viewer.locator("[data-drawn=image]")
    before = zoom_of(image)
    viewer.get_by_role("button", name="Nearer").click()
    expect(image).to_have_attribute("style", re.compile(r"invert\(1\)"))
    assert zoom_of(image) == pytest.approx(1.5 * before, rel=1e-3)
    viewer.get_by_role("button", name="Close").click()
    laptop.get_by_role("link", name="Answer this hold point").click()
    answer(laptop, "Approve")
    expect(screen.where(phone)).to_contain_text("Glide path", timeout=5000)
    stored = phone.request.get(f"/api/v1/cases/{case}/images").json()["images"]
    assert [(each["state"], each["canal"], each["purpose"]) for each in stored] == [("stored", "MB", "length")]


# What the phone's own sheet of apps does: it sends a form to the address that the manifest names.
SHARE = """(bytes) => {
  const files = new DataTransfer()
  files.items.add(new File([new Uint8Array(bytes)], 'shared.png', { type: 'image/png' }))
  const form = document.createElement('form')
  Object.assign(form, { method: 'POST', action: '/share', enctype: 'multipart/form-data' })
  const input = document.createElement('input')
  Object.assign(input, { type: 'file', name: 'images', files: files.files })
  form.append(input)
  document.body.append(form)
  // Once this has returned: the page goes with it.
  setTimeout(() => form.submit())
}"""


def test_a_photo_shared_from_another_app_is_put_to_a_case(phone: Page, demo: Mapping[str, Any]) -> None:
    sign_in(phone, person(demo, "student"))
    # One in which no other test has put an image.
    records.opened(phone, "Shared with it")
    phone.reload()
    expect(phone.get_by_role("main").get_by_role("link", name="Shared with it")).to_be_visible()
    phone.wait_for_function("() => navigator.serviceWorker.controller !== null")
    phone.context.set_offline(True)
    phone.evaluate(SHARE, list(picture(60, 40)))
    phone.wait_for_url("**/share")
    expect(phone.get_by_text("One image was shared.")).to_be_visible()
    phone.get_by_role("button", name="Open the image that was shared").click()
    # Drawn, and not a plate that stands for it.
    drawn = """() => document.querySelector('[data-drawn="small image"]')?.naturalWidth === 60"""
    phone.wait_for_function(drawn)
    phone.get_by_role("dialog").get_by_role("button", name="Close").click()
    phone.context.set_offline(False)
    phone.get_by_role("region", name="To which case?").get_by_role("button", name="Shared with it").click()
    nobody_named(phone)
    expect(phone.get_by_role("button", name=re.compile("^Open before the work"))).to_be_visible()
    # The closed sheet has given back its place in the history: that turn would end another way to go.
    phone.wait_for_function("() => !history.state?.sheet")
    phone.goto("/share")
    expect(phone.get_by_text("Nothing was shared")).to_be_visible()


def test_an_image_that_is_still_on_the_phone_is_said_to_be_there(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = to_the_length(phone, laptop, demo, "Bench 232")
    # What was done gets through a thin line; the image does not.
    phone.route("**/images/*", lambda route: route.abort())
    take_photo(phone)
    answer(phone, "Image taken")
    laptop.goto(f"/cases/{case}/chair")
    expect(laptop.get_by_text("Image still on the phone")).to_be_visible()
    phone.unroute("**/images/*")
    phone.reload()
    expect(laptop.get_by_role("button", name=re.compile("^Open MB: length"))).to_be_visible(timeout=30_000)


def test_an_image_with_a_name_in_it_is_flagged_and_removed_in_two_touches(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = to_the_length(phone, laptop, demo, "Bench 233")
    phone.get_by_label("Choose an image").set_input_files([NAMED])
    tile = phone.get_by_role("button", name=re.compile("^Open MB: length"))
    expect(tile).to_contain_text("Look for a name", timeout=30_000)
    laptop.goto(f"/cases/{case}/chair")
    seen = laptop.get_by_role("button", name=re.compile("^Open MB: length"))
    expect(seen).to_contain_text("Look for a name")

    tile.tap()
    viewer = phone.get_by_role("dialog")
    expect(viewer).to_contain_text("The file says that words are part of the picture.")
    viewer.get_by_role("button", name="Yes").tap()
    viewer.get_by_role("button", name="A name or number is written in it").tap()
    gone = "Removed. A name or number is written in it."
    expect(screen.removed(phone)).to_contain_text(gone)
    expect(viewer).to_be_hidden()
    expect(tile).to_be_hidden()

    image = phone.request.get(f"/api/v1/cases/{case}/images").json()["images"][0]
    laptop.reload()
    expect(screen.removed(laptop)).to_contain_text(gone)
    expect(seen).to_be_hidden()
    for part in ("content", "thumbnail", "data-set"):
        assert laptop.request.get(f"/api/v1/cases/{case}/images/{image['id']}/{part}").status == 410
    phone.goto(f"/cases/{case}/record")
    expect(phone.get_by_role("main")).to_contain_text(gone)


# What the browser kept of an address, without asking the server.
OF_THE_BROWSER = """(address) =>
  fetch(address, { cache: 'only-if-cached', mode: 'same-origin' }).then((kept) => kept.status, () => 'nothing')"""


def test_a_removed_image_is_gone_from_the_browser_too(phone: Page, laptop: Page, demo: Mapping[str, Any]) -> None:
    case = to_the_length(phone, laptop, demo, "Bench 235")
    take_photo(phone)
    tile = phone.get_by_role("button", name=re.compile("^Open MB: length"))
    expect(tile.locator("[data-drawn='small image']")).to_have_attribute(
        "src", re.compile("/thumbnail$"), timeout=30_000
    )
    tile.tap()
    image = phone.request.get(f"/api/v1/cases/{case}/images").json()["images"][0]
    content = f"/api/v1/cases/{case}/images/{image['id']}/content"
    expect(phone.locator(f"[data-drawn=image][src='{content}']")).to_be_visible()
    assert phone.evaluate(OF_THE_BROWSER, content) == 200
    phone.get_by_role("button", name="Remove this image").tap()
    phone.get_by_role("button", name="Nothing can be told from it").tap()
    expect(screen.removed(phone)).to_be_visible()
    assert phone.evaluate(OF_THE_BROWSER, content) == 410


def test_an_image_thrown_away_in_flight_mode_is_said_to_be_gone(
    open_phone: Opens, open_laptop: Opens, demo: Mapping[str, Any]
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = to_the_length(phone, laptop, demo, "Bench 234")
    phone.context.set_offline(True)
    take_photo(phone)
    phone.get_by_role("button", name=re.compile("^Open MB: length")).tap()
    viewer = phone.get_by_role("dialog")
    viewer.get_by_role("button", name="Remove this image").tap()
    viewer.get_by_role("button", name="Nothing can be told from it").tap()
    expect(screen.removed(phone)).to_contain_text("the server is told once there is a connection")
    phone.context.set_offline(False)
    phone.reload()
    gone = screen.removed(phone)
    expect(gone).to_contain_text("Removed. Nothing can be told from it.", timeout=30_000)
    expect(gone).not_to_contain_text("once there is a connection", timeout=30_000)
    laptop.goto(f"/cases/{case}")
    expect(screen.removed(laptop)).to_contain_text("Removed. Nothing can be told from it.")
    stored = laptop.request.get(f"/api/v1/cases/{case}/images").json()["images"]
    assert [each["state"] for each in stored] == ["removed"]
