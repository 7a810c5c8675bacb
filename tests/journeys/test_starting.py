"""The one command: starts over, says where and who, ends in order, keeps its records."""

from __future__ import annotations

import json
import os
import sqlite3
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Any

import pytest

from tests.bucket import free_port

ROOT = Path(__file__).resolve().parents[2]


@contextmanager
def _demo(folder: Path, port: int, *arguments: str) -> Iterator[dict[str, Any]]:
    """What the started command says of itself; ended by the signal a service manager sends."""
    env = {**os.environ, "DATABASE_URL": f"sqlite:///{folder / 'demo.sqlite3'}", "PORT": str(port)}
    command = [sys.executable, "manage.py", "demo", "--json", *arguments]
    with subprocess.Popen(command, cwd=ROOT, env=env, stdout=subprocess.PIPE, text=True) as started:
        assert started.stdout
        try:
            yield json.loads(started.stdout.readline())
        finally:
            started.terminate()
            started.wait(15)


def _ask(folder: Path, sql: str) -> int:
    with closing(sqlite3.connect(folder / "demo.sqlite3")) as records, records:
        row = records.execute(sql).fetchone()
        return int(row[0]) if row else 0


CASES = "SELECT count(*) FROM cases_case"
MARKS = "SELECT count(*) FROM django_session WHERE session_key = 'a-mark'"
OLD = "SELECT count(*) FROM sqlite_master WHERE name = 'old'"


def test_it_starts_over_and_keeps_its_records(tmp_path: Path) -> None:
    port = free_port()
    _ask(tmp_path, "CREATE TABLE old (one)")
    with _demo(tmp_path, port, "--fresh") as demo:
        assert {"name", "username", "password", "role"} <= set(demo["sign_ins"][0])
        with urllib.request.urlopen(demo["url"], timeout=5) as answer:  # noqa: S310 - our own server
            assert b"<title>" in answer.read()
        loaded = _ask(tmp_path, CASES)
        assert loaded > 0
        assert _ask(tmp_path, OLD) == 0
        _ask(tmp_path, "INSERT INTO django_session VALUES ('a-mark', '', '2099-01-01')")
    with pytest.raises(OSError, match="refused"):
        urllib.request.urlopen(demo["url"], timeout=5)  # noqa: S310
    with _demo(tmp_path, port):
        assert (_ask(tmp_path, CASES), _ask(tmp_path, MARKS)) == (loaded, 1)
