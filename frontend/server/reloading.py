"""Two servers for whoever changes the program: Django's own, and before it that of the app. Both load what changed."""

from __future__ import annotations

import socket
import subprocess
import sys
from pathlib import Path

from frontend.server import build, node, serve
from frontend.server.serve import Address

VITE = build.FRONTEND / "node_modules" / "vite" / "bin" / "vite.js"
CONFIG = build.FRONTEND / "vite.config.ts"


def start(address: Address, settings: dict[str, str]) -> list[subprocess.Popen[bytes]]:
    """Both, once they answer; the app and, through it, the API are at `address`. Raises CannotServe."""
    django = _free_address()
    runserver = [sys.executable, "manage.py", "runserver", f"{django.host}:{django.port}"]
    servers = [serve.start(django, settings, runserver)]
    app: list[str | Path] = [
        "node",
        VITE,
        "--config",
        CONFIG,
        "--host",
        address.host,
        "--port",
        str(address.port),
        "--strictPort",
    ]
    environment = {"DJANGO_PORT": str(django.port), "PATH": node.search_path()}
    try:
        servers.append(serve.start(address, environment, [*app, "--clearScreen", "false"]))
    except BaseException:
        serve.stop(servers[0])
        raise
    return servers


def _free_address() -> Address:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        host, port = probe.getsockname()
    return Address(host, port)
