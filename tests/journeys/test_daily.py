"""What whoever changes the program does daily: sees a change of either side at once, and commits it."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import requests
from playwright.sync_api import Browser, Page, expect

from tests.bucket import free_port
from tests.journeys import screen
from tests.journeys.conftest import PHONE
from tests.journeys.hands import choose, measures, person, to_canal, type_mm, type_sign_in
from tests.journeys.running import DEMONSTRATION, ROOT

# Django's watcher looks once a second and loads the program in about three, on a machine that has nothing else to do.
RELOADED_MS = 60_000
LEFT_OUT = shutil.ignore_patterns("node_modules", "dist", "__pycache__", "pictures")


def link(source: str, target: str) -> None:
    """As good as a copy of what nobody changes."""
    try:
        os.link(source, target)
    except OSError:
        shutil.copy2(source, target)


@pytest.fixture
def copied(tmp_path: Path) -> Path:
    """The program once more, to be changed."""
    copy = tmp_path / "copy"
    for name in ("planning", "cases", "frontend", ".lock", ".ci"):
        shutil.copytree(ROOT / name, copy / name, ignore=LEFT_OUT)
    for name in ("manage.py", "pyproject.toml"):
        shutil.copy(ROOT / name, copy)
    shutil.copytree(
        ROOT / "frontend" / "node_modules",
        copy / "frontend" / "node_modules",
        ignore=shutil.ignore_patterns(".vite*"),
        symlinks=True,
        copy_function=link,
    )
    (copy / ".venv").symlink_to((ROOT / ".venv").resolve())
    return copy


@pytest.fixture
def reloading(copied: Path, tmp_path: Path) -> Iterator[dict[str, Any]]:
    """What `demo --reload` says of itself."""
    database = tmp_path / "demo.sqlite3"
    if DEMONSTRATION:
        shutil.copy(DEMONSTRATION, database)
    env = {**os.environ, "DATABASE_URL": f"sqlite:///{database}", "PORT": str(free_port()), "HOST": "127.0.0.1"}
    command = [sys.executable, "manage.py", "demo", "--reload", "--json"]
    with subprocess.Popen(command, cwd=copied, env=env, stdout=subprocess.PIPE, text=True) as started:
        assert started.stdout
        try:
            yield json.loads(started.stdout.readline())
        finally:
            started.terminate()
            started.wait(20)


def change(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


def test_a_change_of_either_side_is_there_at_once_and_nobody_signs_in_again(
    browser: Browser, copied: Path, reloading: dict[str, Any]
) -> None:
    context = browser.new_context(base_url=reloading["url"], viewport=PHONE, locale="en-GB", reduced_motion="reduce")
    page = context.new_page()
    page.set_default_timeout(RELOADED_MS)
    page.goto("/")
    type_sign_in(page, person(reloading, "student"))
    page.get_by_role("button", name="Understood").click()

    page.get_by_role("link", name="Training block 3").click()
    to_canal(page, "single")
    choose(measures(page), "Pre-operative image")
    type_mm(page, "Tooth on the image", "22.5")
    with page.expect_response(lambda answer: answer.url.endswith("/readings")) as sent:
        page.get_by_role("button", name="Keep", exact=True).click()
    assert (sent.value.request.method, sent.value.status) == ("POST", 201)

    change(copied / "frontend" / "src" / "words" / "measure.ts", "`Measure ${", "`Gauge ${")
    expect(page.get_by_role("button", name="Gauge single", exact=True)).to_be_visible()

    health = copied / "frontend" / "server" / "health.py"
    alive = f"{reloading['url']}/livez"
    change(health, '"alive")', '"still alive"')
    by_now(page, lambda: not requests.get(alive, timeout=10).ok)
    change(health, '"still alive"', '"still alive")')
    by_now(page, lambda: requests.get(alive, timeout=10).text == "still alive")
    assert page.request.get("/api/v1/session").status == 200
    context.close()


def test_what_is_committed_is_checked_and_nothing_else(copied: Path) -> None:
    def git(*arguments: str) -> subprocess.CompletedProcess[str]:
        own = {"GIT_CONFIG_GLOBAL": "", "GIT_CONFIG_NOSYSTEM": "1"}
        for who in ("AUTHOR", "COMMITTER"):
            own |= {f"GIT_{who}_NAME": "nobody", f"GIT_{who}_EMAIL": "nobody@invalid"}
        env = {**os.environ, **own}
        return subprocess.run(["git", *arguments], cwd=copied, env=env, capture_output=True, text=True, check=False)

    git("init", "--quiet")
    git("config", "core.hooksPath", ".ci/hooks")
    python, app = copied / "planning" / "new.py", copied / "frontend" / "src" / "units" / "new.ts"
    git("add", "pyproject.toml", "frontend/biome.json")

    python.write_text("import os\n")
    git("add", "planning/new.py")
    refused = git("commit", "--message", "Unused")
    assert refused.returncode != 0
    assert "F401" in refused.stdout + refused.stderr

    python.write_text("STOP_MM = 1.0\n")
    app.write_text("const  unused = 1\n")
    git("add", "planning/new.py", "frontend/src/units/new.ts")
    refused = git("commit", "--message", "Not formatted")
    assert refused.returncode != 0
    assert "units/new.ts" in refused.stdout + refused.stderr

    app.write_text("export const STOP_MM = 1\n")
    git("add", "frontend/src/units/new.ts")
    app.write_text("not yet    whole\n")
    refused = git("commit", "--message", "x" * 73)
    assert refused.returncode != 0
    assert "73 characters" in refused.stderr
    committed = git("commit", "--message", "x" * 72)
    assert committed.returncode == 0, committed.stderr
    assert git("show", "HEAD:frontend/src/units/new.ts").stdout == "export const STOP_MM = 1\n"


def by_now(page: Page, is_so: Callable[[], bool]) -> None:
    screen.until(page, is_so, RELOADED_MS / 1000)
