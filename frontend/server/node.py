"""Finds Node for the front end's build, or brings it from the Python package index. Standard library only."""

from __future__ import annotations

import os
import re
import shutil
import subprocess

from frontend.server import environment

# What the bundler asks for.
LEAST = (20, 19)


def search_path() -> str:
    """A PATH on which `node` (20.19 or newer) and `npm` are found; brings them among the tools if it must."""
    path = os.environ.get("PATH", os.defpath)
    if _version(path) >= LEAST and shutil.which("npm", path=path):
        return path
    environment.install("node")
    return f"{environment.TOOLS / 'bin'}{os.pathsep}{path}"


def _version(path: str) -> tuple[int, int]:
    node = shutil.which("node", path=path)
    if node is None:
        return (0, 0)
    said = subprocess.run([node, "--version"], capture_output=True, text=True, check=False).stdout
    version = re.match(r"v(\d+)\.(\d+)", said)
    return (int(version[1]), int(version[2])) if version else (0, 0)
