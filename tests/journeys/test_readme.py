"""The README's tour of the API, run as it is printed."""

from __future__ import annotations

import ast
import os
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest

README = Path(__file__).resolve().parents[2] / "README.md"


def test_the_tour_of_the_api_runs_as_printed(demo: dict[str, Any]) -> None:
    tour = re.search(r"```bash\n(.*?)```", README.read_text(encoding="utf-8"), re.DOTALL)
    assert tour
    ran = subprocess.run(
        ["bash", "-e"],
        input=tour[1],
        capture_output=True,
        text=True,
        env={**os.environ, "URL": demo["url"]},
        timeout=120,
    )
    assert ran.stderr == ""
    said = ran.stdout.splitlines()
    # An upper left first molar (ISO 3950: 26); Ingle's arithmetic: 20.5 + 0.5 - 1.0.
    assert said[:2] == ["Maxillary left first molar", "20.0"]
    # By hand: 500 px straight and sqrt(50² + 87²) = 100 px at atan(50/87) = 30°; 18 mm are 600 px. An arc is a
    # little longer than its chord.
    length = ast.literal_eval(said[2])
    assert length["value"] == pytest.approx(18.0, abs=0.2)
    assert length["least"] < 18.0 < length["most"]
    assert float(said[3]) == pytest.approx(30, abs=0.2)
    assert said[-5:-3] == ["returned", "waiting"]
    assert said[-2:] == ["approved", "Plan 2 is approved."]
