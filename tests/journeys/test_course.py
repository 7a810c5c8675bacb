"""A course of another platform (LTI 1.3): its teacher takes an assignment in, its student opens it and is signed in, a
supervisor approves, and the grade stands in the course. The platform's pages lie on another site, as they do.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page, expect

from tests.journeys import hands, records
from tests.journeys.conftest import Opens
from tests.journeys.running import ROOT, own
from tests.lti_platform import CLAIM, GRADES, INSTRUCTOR, LEARNER, LINKING, PERSONAL, Platform, platform


def form(to: str, fields: dict[str, str], button: str = "", method: str = "post") -> str:
    """One that is sent by its button, or at once where it has none."""
    kept = "".join(f'<input type="hidden" name="{name}" value="{value}">' for name, value in fields.items())
    sends = f"<button>{button}</button>" if button else "<script>document.forms[0].submit()</script>"
    return f'<!doctype html><form method="{method}" action="{to}">{kept}{sends}</form>'


class Course:
    """The platform's pages: a course with its links, and the sign-in that it has behind it."""

    def __init__(self, here: Platform, tool: str) -> None:
        self.here, self.tool = here, tool
        # By its name it is another site than the tool, as browsers judge.
        self.at = f"http://localhost:{urlsplit(here.at).port}/"
        self.links: list[dict[str, Any]] = []
        here.pages |= {
            "/course": lambda asked: self.shown(asked["as"]),
            "/authorize": lambda asked: form(f"{self.at}signed-in", asked, method="get"),
            "/signed-in": self.launches,
            "/links": self.takes_in,
        }

    def shown(self, who: str) -> str:
        add = self._entry("add", "Add an assignment") if who == "teacher" else ""
        return f"<h1>Course</h1>{add}" + "".join(self._entry("open", link["title"]) for link in self.links)

    def _entry(self, what: str, says: str) -> str:
        begins = {"iss": "https://courses.example", "client_id": "fourth-canal-1", "login_hint": what}
        return form(f"{self.tool}/lti/login", begins | {"target_link_uri": f"{self.tool}/lti/launch"}, says)

    def launches(self, asked: dict[str, str]) -> str:
        claims = self._adds() if asked["login_hint"] == "add" else self._opens()
        token = self.here.token(self.here.claims(asked["nonce"], claims))
        return form(asked["redirect_uri"], {"id_token": token, "state": asked["state"]})

    def _adds(self) -> dict[str, Any]:
        settings = {
            "deep_link_return_url": f"{self.here.at}links",
            "accept_types": ["ltiResourceLink"],
            "accept_presentation_document_targets": ["window"],
        }
        return {
            f"{CLAIM}message_type": "LtiDeepLinkingRequest",
            f"{CLAIM}resource_link": None,
            f"{CLAIM}custom": None,
            f"{CLAIM}roles": [INSTRUCTOR],
            f"{LINKING}deep_linking_settings": settings,
        }

    def _opens(self) -> dict[str, Any]:
        (link,) = self.links
        return {
            f"{CLAIM}roles": [LEARNER],
            f"{CLAIM}custom": link["custom"],
            f"{GRADES}claim/endpoint": {"scope": [f"{GRADES}scope/score"], "lineitem": self.here.line_item},
        }

    def takes_in(self, sent: dict[str, str]) -> str:
        self.links += self.here.read(sent["JWT"])[f"{LINKING}content_items"]
        return self.shown("teacher")


def registers(keeper: Page, here: Platform, password: str) -> None:
    """As another system would do it for the coordinator: the platform, and the tool's keys there."""
    session = keeper.request.get("/api/v1/session").json()
    programme = session["memberships"][0]["programme"]["id"]
    body = {**here.registered, "login_address": f"{here.at}authorize", "password": password}
    hands.send(keeper, "POST", f"programmes/{programme}/lti-platforms", body)
    here.tool_keys = keeper.request.get("/lti/keys").json()


def delivers(demo: dict[str, Any]) -> None:
    """The worker beside the server, once."""
    env = {**os.environ, **own(Path(demo["database"]))}
    subprocess.run([sys.executable, "manage.py", "deliver", "--once"], cwd=ROOT, env=env, check=True, timeout=120)


def switches_off(keeper: Page, password: str) -> None:
    """The platform, among the other systems of the programme."""
    keeper.goto("/account/keys")
    keeper.get_by_role("link", name="Other systems").click()
    platforms = keeper.get_by_role("region", name="Courses that lead here")
    platforms.get_by_role("button", name="Switch Courses off").click()
    judged = Axe().run(keeper)
    assert judged.violations_count == 0, judged.generate_report()
    platforms.get_by_label("Your password, once more").fill(password)
    platforms.get_by_role("button", name="Switch Courses off").click()
    expect(platforms.get_by_text("Switched off")).to_be_visible()


def test_an_assignment_goes_into_a_course_is_done_and_comes_back_as_a_grade(
    demo: dict[str, Any], open_laptop: Opens, open_phone: Opens
) -> None:
    keeper, who = open_laptop(), hands.person(demo, "coordinator")
    hands.sign_in(keeper, who)
    with platform() as here:
        registers(keeper, here, who["password"])
        course = Course(here, demo["url"])

        teacher = open_laptop()
        teacher.goto(f"{course.at}course?as=teacher")
        teacher.get_by_role("button", name="Add an assignment").click()
        expect(teacher.get_by_role("heading", name="Choose an assignment")).to_be_visible()
        teacher.get_by_label("Tooth", exact=True).select_option("26")
        teacher.get_by_role("button", name="Choose").click()
        teacher.get_by_role("button", name="Put it into the course").click()
        expect(teacher.get_by_role("button", name="Plan tooth 26")).to_be_visible()

        student = open_phone()
        student.goto(f"{course.at}course?as=student")
        student.get_by_role("button", name="Plan tooth 26").click()
        student.get_by_role("button", name="Understood").click()
        expect(student.get_by_role("heading", level=1, name=re.compile("^26 · Course [A-Z]{6}$"))).to_be_visible()
        session = student.request.get("/api/v1/session").json()
        assert [each["role"] for each in session["memberships"]] == ["student"]
        assert not any(text in str(session) for text in PERSONAL.values())

        case = student.request.get(f"/api/v1/cases/{urlsplit(student.url).path.split('/')[2]}").json()
        assert case["tooth"]["iso"] == "26"
        records.confirms_lengths(student, case)
        version = records.plan_anew(student, case["id"])
        delivers(demo)
        supervisor = open_laptop()
        hands.sign_in(supervisor, hands.person(demo, "supervisor"))
        records.approves(supervisor, version)
        delivers(demo)
        grades = [(score.body["gradingProgress"], score.body.get("scoreGiven")) for score in here.scores]
        assert grades == [("PendingManual", None), ("FullyGraded", 1)]
        # What stands beside the grade leads to the record, for whoever may see it.
        supervisor.goto(here.scores[-1].body["comment"])
        expect(supervisor.get_by_text(re.compile("Course [A-Z]{6}")).first).to_be_visible()
        switches_off(keeper, who["password"])
        student.goto(f"{course.at}course?as=student")
        student.get_by_role("button", name="Plan tooth 26").click()
        expect(student.get_by_role("heading", name="You are not signed in")).to_be_visible()
