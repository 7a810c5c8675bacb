"""What the journeys need of the machine: Chromium, and curl for the README's tour; brought on Debian."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys

NAMES = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
PACKAGE = "chromium-headless-shell"


def find() -> str:
    """Path of a Chromium. Leaves with a sentence that says how to get one where there is none and none can be had."""
    wanted = [package for package, there in ((PACKAGE, _chromium()), ("curl", shutil.which("curl"))) if not there]
    if wanted:
        _install(wanted)
    chromium = _chromium()
    if not chromium or not shutil.which("curl"):
        get = f"apt-get install {' '.join(wanted)}"
        sys.exit(f"The browser journeys need Chromium and curl: {get} (or set CHROMIUM to one that is there).")
    return chromium


def _install(packages: list[str]) -> None:
    apt = shutil.which("apt-get")
    if not apt or os.geteuid() != 0:
        return
    print(f"Installing {', '.join(packages)} ...", file=sys.stderr, flush=True)
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for command in (["update", "-qq"], ["install", "-y", "-qq", "--no-install-recommends", *packages]):
        subprocess.run([apt, *command], env=quiet, check=False, stdout=subprocess.DEVNULL)


def _chromium() -> str | None:
    named = os.environ.get("CHROMIUM")
    return named or next((path for name in NAMES if (path := shutil.which(name))), None)
