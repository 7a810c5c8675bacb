"""Cases in the states that the screens are shown in, brought there over the API."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, expect

from tests.journeys import marking, records
from tests.journeys.hands import send
from tests.journeys.test_what_is_asked import to_resistance


@dataclass(frozen=True, kw_only=True, slots=True)
class Cases:
    """Each by its identifier."""

    charted: str
    """With an image that was marked."""
    image: str
    submitted: str
    """A plan that waits for a decision."""
    step: str
    """An instrument to its length is due."""
    depth: str
    """An instrument is due that goes as deep as it goes."""
    asked: str
    """A sign-off of the length is asked for in MB."""
    halted: str
    closed: str
    """A visit in the clinic, closed for the day."""
    clinic: str
    """A visit in the clinic that may not start yet."""


def opened(demo: Mapping[str, Any], student: Page, supervisor: Page, folder: Path) -> Cases:
    def approved(alias: str, tooth: str = "37", setting: str = "extracted") -> str:
        return records.approved_case(demo, student, supervisor, alias, tooth=tooth, setting=setting)

    charted, image = _marked(student, folder)
    step, depth, asked, halted = (approved(f"Gallery {number}") for number in range(2, 6))
    clinic, closed = (approved(f"Gallery {number}", "36", "clinic") for number in (6, 7))
    records.to_the_glide_path(student, supervisor, depth, "MB")
    to_resistance(student, depth, lambda node, exit_, **more: _tell(student, depth, "MB", node, exit=exit_, **more))
    for node, exit_ in (("explore/10-02", "reached"), ("explore/10-02/irrigate", "done")):
        _tell(student, asked, "MB", node, exit=exit_)
    _tell(student, asked, "MB", "length/image", exit="done", no_image="image_elsewhere")
    _tell(student, asked, "MB", "length/sign-off", kind="ask", note="Tip 0.5 short on the image.", together="")
    _tell(student, halted, "", "", kind="emergency", what="instrument_separated", note="", before=[])
    _tell(student, closed, "", "", kind="close", access_sealed=True)
    return Cases(
        charted=charted,
        image=image,
        submitted=str(records.submitted_plan(student, "Gallery 8")["id"]),
        step=step,
        depth=depth,
        asked=asked,
        halted=halted,
        closed=closed,
        clinic=clinic,
    )


def _tell(page: Page, case: str, canal: str, node: str, *, kind: str = "step", **payload: Any) -> None:
    plan = page.request.get(f"/api/v1/cases/{case}/events").json()["course"]["plan_hash"]
    records.report(page, case, plan, [(canal, node, {"kind": kind, **payload})])


def _marked(student: Page, folder: Path) -> tuple[str, str]:
    """A case and its image, on which a canal is marked by the instrument that stands in it."""
    case = marking.charted(student, "Gallery 1")
    student.goto(f"/cases/{case}")
    marking.add_image(student, marking.DRAWN.png(folder / "drawn.png"))
    student.get_by_role("link", name="Mark and measure").tap()
    marking.mark_instrument(student, marking.DRAWN, marking.MB, 18)
    marking.measure(student, marking.DRAWN, marking.MB)
    student.get_by_role("button", name="Keep these marks").tap()
    expect(student.get_by_text("taken as a reading")).to_be_visible()
    for canal in student.request.get(f"/api/v1/cases/{case}").json()["canals"]:
        reading = {"method": "confirming_image", "set_mm": 19.0, "tip_short_mm": 1.0, "reference_point": "MB cusp"}
        if canal["name"] != "MB":
            reading["reference_point"] = canal["reference_point"]
            send(student, "POST", f"canals/{canal['id']}/readings", {"reading": reading})
    image = student.request.get(f"/api/v1/cases/{case}/images").json()["images"][0]["id"]
    student.goto(f"/cases/{case}")
    marking.add_image(student, marking.DRAWN.png(folder / "again.png"))
    expect(student.get_by_role("link", name="Images side by side")).to_be_visible()
    return case, str(image)
