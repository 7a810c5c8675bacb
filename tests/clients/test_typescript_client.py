"""Another generator's client, in TypeScript, drives a case to its approval over a live server.

The generator and the compiler are the judges of the description: nothing of either is ours.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
from pathlib import Path
from typing import Any

import pytest
from pytest_django.live_server_helper import LiveServer

from cases.models import Kit, Person, Programme, ToothPlanVersion
from frontend.server import build, node
from frontend.server.env import ROOT
from tests.keys import own_key, service_key

HERE = Path(__file__).parent / "typescript"
DESCRIPTION = ROOT / "tests" / "architecture" / "openapi.yaml"


@pytest.fixture(scope="module")
def compiled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The course, type-checked against the client and compiled."""
    build.install_packages(HERE)
    folder = tmp_path_factory.mktemp("typescript")
    for name in ("course.ts", "tsconfig.json"):
        shutil.copy(HERE / name, folder)
    output = run("node_modules/.bin/openapi-ts", "--input", str(DESCRIPTION), "--output", str(folder / "made"))
    assert "Generating" in output
    run("node_modules/.bin/tsc", "--project", str(folder))
    return folder / "course.js"


def test_a_mistake_would_not_be_compiled(compiled: Path) -> None:
    course = compiled.with_name("course.ts")
    wrong = compiled.with_name("wrong.ts")
    wrong.write_text(course.read_text().replace("decision: 'approved'", "decision: 'aproved'"))
    done = subprocess.run(
        [HERE / "node_modules/.bin/tsc", "--project", compiled.parent, "--noEmit"],
        env=with_node(),
        capture_output=True,
        text=True,
        check=False,
    )
    assert "wrong.ts" in done.stdout
    assert "aproved" in done.stdout
    wrong.unlink()


def test_a_case_is_entered_planned_and_approved(
    compiled: Path, live_server: LiveServer, programme: Programme, kit: Kit, priya: Person, vale: Person, rosa: Person
) -> None:
    keys = {"service": service_key(rosa).text, "student": own_key(priya).text, "supervisor": own_key(vale).text}
    asked = {"url": live_server.url, "programme": str(programme.pk), "student": str(priya.pk), "keys": keys}
    done: dict[str, Any] = json.loads(run("run.mjs", str(compiled), said=json.dumps(asked)))
    version = ToothPlanVersion.objects.get(pk=done["version"])
    assert str(version.state) == "approved"
    assert done["read"] == ["plan", "given"]
    assert [done["kinds"][0], done["kinds"][-1]] == ["case_opened", "version_approved"]


def run(script: str, *arguments: str, said: str = "") -> str:
    """What a script says; it must end well."""
    command = ["node", str(HERE / script), *arguments]
    done = subprocess.run(command, cwd=HERE, env=with_node(), input=said, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def with_node() -> dict[str, str]:
    return {**os.environ, "PATH": node.search_path()}
