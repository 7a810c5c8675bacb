"""Finds a Chromium for the journeys, or brings Debian's."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys

NAMES = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
PACKAGE = "chromium-headless-shell"
HOW = f"The browser journeys need Chromium: apt-get install {PACKAGE} (or set CHROMIUM to one that is there)."


def find() -> str:
    """Path of a Chromium. As root on Debian it is installed; otherwise leaves with a sentence that says how."""
    found = _there()
    if found:
        return found
    apt = shutil.which("apt-get")
    if apt and os.geteuid() == 0:
        print(f"Installing {PACKAGE} ...", file=sys.stderr, flush=True)
        quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
        subprocess.run([apt, "update", "-qq"], env=quiet, check=False, stdout=subprocess.DEVNULL)
        install = [apt, "install", "-y", "-qq", "--no-install-recommends", PACKAGE]
        subprocess.run(install, env=quiet, check=False, stdout=subprocess.DEVNULL)
    found = _there()
    if not found:
        sys.exit(HOW)
    return found


def _there() -> str | None:
    told = os.environ.get("CHROMIUM")
    return told or next((path for name in NAMES if (path := shutil.which(name))), None)
