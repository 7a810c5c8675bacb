"""Starts what the phone is asked: a file of tests in its own language, over what was written down here."""

from __future__ import annotations

import json
import os
import subprocess
from pathlib import Path
from typing import Any

from frontend.server import build, node

HERE = Path(__file__).parent


def holds(test: str, settled: Any, *, folder: Path) -> None:
    """Has the phone hold `test` over what was settled. Raises CalledProcessError."""
    file = folder / "told.json"
    file.write_text(json.dumps(settled), encoding="utf-8")
    build.install_packages(build.FRONTEND)
    env = {**os.environ, "PATH": node.search_path(), "TOLD": str(file)}
    subprocess.run(["npx", "vitest", "run", "--dir", str(HERE), test], cwd=build.FRONTEND, env=env, check=True)
