"""A name in a picture: wiped over on the phone with one thumb, and in nothing that leaves it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from hashlib import sha256
from io import BytesIO
from typing import Any, Literal

import numpy as np
import pytest
from PIL import Image
from playwright.sync_api import FilePayload, Page, expect

from tests.journeys.conftest import Opens
from tests.journeys.hands import nobody_named
from tests.journeys.test_chair import to_the_length

WIDTH, HEIGHT, BAND = 1200, 900, 180


def with_a_name() -> FilePayload:
    """Grey below; in the band at the top, white where a name would stand."""
    values = np.full((HEIGHT, WIDTH, 3), 120, dtype=np.uint8)
    values[:BAND] = 255
    out = BytesIO()
    Image.fromarray(values).save(out, "JPEG", quality=95)
    return FilePayload(name="IMG_2.jpg", mimeType="image/jpeg", buffer=out.getvalue())


def wipe(page: Page) -> None:
    """One finger over the band, from side to side and back."""
    board = page.get_by_role("application", name="Picture to wipe over")
    box = board.bounding_box()
    assert box is not None
    zoom = min(box["width"] / WIDTH, box["height"] / HEIGHT)
    left, top = box["x"] + (box["width"] - WIDTH * zoom) / 2, box["y"] + (box["height"] - HEIGHT * zoom) / 2
    page.mouse.move(left + 2, top + 10)
    page.mouse.down()
    for x, y in [(1.0, 10), (1.0, BAND * zoom - 15), (0.0, BAND * zoom - 15), (0.5, 20)]:
        page.mouse.move(left + x * WIDTH * zoom, top + y, steps=8)
    page.mouse.up()


def by_keys(page: Page) -> None:
    """Nearer, up to the picture's left upper corner, and black under the frame; all taken back again."""
    board = page.get_by_role("application", name="Picture to wipe over")
    board.focus()
    for key in ("+", "+", "+", "ArrowLeft", "ArrowUp", "Enter", "Enter"):
        page.keyboard.press(key)
    expect(page.locator("[data-drawn=stroke]")).to_have_count(2)
    for _ in range(2):
        page.get_by_role("button", name="Take the last one back").click()
    expect(page.locator("[data-drawn=stroke]")).to_have_count(0)
    board.press("0")


def only_in_sight(page: Page) -> None:
    """What is out of sight is black on every side, in one step."""
    keep = page.get_by_role("button", name="Keep only what is in sight")
    expect(keep).to_be_disabled()
    for _ in range(3):
        page.get_by_role("button", name="Nearer").click()
    keep.click()
    expect(page.locator("[data-drawn=stroke]")).to_have_count(4)
    # The whole is shown, so that it is seen what is black.
    expect(keep).to_be_disabled()
    page.get_by_role("button", name="Take the last one back").click()
    expect(page.locator("[data-drawn=stroke]")).to_have_count(0)


def pixels(data: bytes) -> Any:
    with Image.open(BytesIO(data)) as opened:
        return np.asarray(opened.convert("L"), dtype=int)


@pytest.mark.parametrize(
    ("width", "height", "scheme"), [(360, 740, "light"), (412, 915, "dark")], ids=["small light", "large dark"]
)
def test_a_name_is_blacked_out_before_it_leaves_the_phone(
    open_phone: Opens,
    open_laptop: Opens,
    demo: Mapping[str, Any],
    width: int,
    height: int,
    scheme: Literal["light", "dark"],
) -> None:
    phone, laptop = open_phone(), open_laptop()
    case = to_the_length(phone, laptop, demo, f"Bench {width}")
    phone.set_viewport_size({"width": width, "height": height})
    phone.emulate_media(color_scheme=scheme)
    left: list[str] = []
    phone.on("request", lambda request: left.append(request.method) if request.method == "PATCH" else None)
    photo = with_a_name()
    phone.get_by_label("Take a photo").set_input_files([photo])
    asked = phone.get_by_role("dialog", name="Before it is sent")
    expect(asked).to_contain_text("Is a name or a number of a person written in the picture?")
    # Put off it stays on the phone, said to be unsent, and is asked about again at its tile.
    asked.get_by_role("button", name="Later").click()
    tile = phone.get_by_role("button", name=re.compile("^Open MB: length"))
    expect(tile).to_contain_text("not sent: look first")
    phone.reload()
    expect(asked).to_be_visible()

    asked.get_by_role("button", name="Black out a part").click()
    for name in ("Black it out", "Take the last one back", "Leave it as it is"):
        button = asked.get_by_role("button", name=name).bounding_box()
        assert button is not None
        assert button["height"] >= 44
        assert button["y"] + button["height"] <= height
    only_in_sight(phone)
    by_keys(phone)
    wipe(phone)
    asked.get_by_role("button", name="Take the last one back").click()
    expect(asked.get_by_role("button", name="Black it out")).to_be_disabled()
    wipe(phone)
    asked.get_by_role("button", name="Black it out").click()
    expect(asked).to_contain_text("Is a name or a number of a person written in the picture?", timeout=15_000)
    assert left == []
    nobody_named(phone)
    expect(tile.locator("[data-drawn='small image']")).to_have_attribute(
        "src", re.compile("/thumbnail$"), timeout=30_000
    )

    image = phone.request.get(f"/api/v1/cases/{case}/images").json()["images"][0]
    # The server's own digest of all that it was sent.
    assert image["sha256"] != sha256(photo["buffer"]).hexdigest()
    assert (image["name_check"], image["checked_by"]["id"]) == ("nobody_named", image["taken_by"]["id"])
    stored = laptop.request.get(f"/api/v1/cases/{case}/images/{image['id']}/content").body()
    seen = pixels(stored)
    assert seen.shape == (HEIGHT, WIDTH)
    # JPEG at this quality: a few steps of 255, common practice, no source.
    assert seen[: BAND - 20].max() < 20
    assert abs(seen[-200:].mean() - 120) < 3
