"""What the README and the tour of the API print, run as it is printed."""

from __future__ import annotations

import ast
import json
import os
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]


def said_by(page: str, demo: dict[str, Any]) -> str:
    """What comes out of the commands that the page prints."""
    commands = re.search(r"```bash\n(.*?)```", (ROOT / page).read_text(encoding="utf-8"), re.DOTALL)
    assert commands
    ran = subprocess.run(
        ["bash", "-e"],
        input=commands[1],
        capture_output=True,
        text=True,
        env={**os.environ, "URL": demo["url"]},
        timeout=120,
    )
    assert ran.stderr == ""
    return ran.stdout


def test_what_the_readme_prints_runs(demo: dict[str, Any]) -> None:
    """By hand, Ingle's arithmetic: 20.5 + 0.5 - 1.0."""
    assert json.loads(said_by("README.md", demo))["working_length_mm"] == pytest.approx(20.0)


def test_the_tour_of_the_api_runs_as_printed(demo: dict[str, Any]) -> None:
    said = said_by("cases/api/v1/TOUR.md", demo).splitlines()
    # An upper left first molar (ISO 3950: 26); Ingle's arithmetic: 20.5 + 0.5 - 1.0.
    assert said[:2] == ["Maxillary left first molar", "20.0"]
    # By hand: 500 px straight and sqrt(50² + 87²) = 100 px at atan(50/87) = 30°; 18 mm are 600 px. An arc is a
    # little longer than its chord.
    length = ast.literal_eval(said[2])
    assert length["value"] == pytest.approx(18.0, abs=0.2)
    assert length["least"] < 18.0 < length["most"]
    assert float(said[3]) == pytest.approx(30, abs=0.2)
    assert said[-6:-4] == ["returned", "waiting"]
    assert said[-3:] == ["approved", "Plan 2 is approved.", "cases:read"]
