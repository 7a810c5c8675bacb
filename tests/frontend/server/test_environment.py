"""The environment is made once, from the lock, and a start that cannot work says so in a sentence."""

from __future__ import annotations

import socket
import subprocess
import sys
from importlib import metadata
from pathlib import Path

import pytest

from frontend.server import environment, node
from frontend.server.serve import Address, CannotServe


@pytest.fixture
def elsewhere(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    (tmp_path / ".lock").mkdir()
    (tmp_path / ".venv").mkdir()
    monkeypatch.setattr(environment, "ROOT", tmp_path)
    monkeypatch.setattr(environment, "VENV", tmp_path / ".venv")
    monkeypatch.setattr(environment, "BIN", tmp_path / ".venv" / "bin")
    return tmp_path


def test_an_old_python_is_told_what_is_needed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "version_info", (3, 10, 4))
    with pytest.raises(SystemExit, match=r"needs Python 3\.11 or newer; this is Python 3\.10"):
        environment.ensure("run")


def test_an_environment_with_the_locked_versions_is_used_as_it_is(elsewhere: Path) -> None:
    version = metadata.version("django")
    (elsewhere / ".lock" / "run.txt").write_text(f"django=={version} \\\n    --hash=sha256:0\n")
    environment.ensure("run")
    assert not (elsewhere / ".venv" / "bin").exists()


def test_what_is_installed_is_not_installed_again(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    lock = elsewhere / ".lock" / "run.txt"
    lock.write_text("one==1\n")
    (elsewhere / ".venv" / "bin").mkdir()
    (elsewhere / ".venv" / "bin" / "python").touch()
    ran: list[list[str]] = []

    def run(command: list[str], **options: object) -> subprocess.CompletedProcess[str]:
        ran.append(command)
        return subprocess.CompletedProcess(command, 0, "", "")

    monkeypatch.setattr(subprocess, "run", run)
    environment.install("run")
    environment.install("run")
    assert len(ran) == 1
    assert "--require-hashes" in ran[0]
    lock.write_text("one==2\n")
    environment.install("run")
    assert len(ran) == 2


def test_a_failed_installation_is_tried_again(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (elsewhere / ".lock" / "run.txt").write_text("one==1\n")
    failed = subprocess.CompletedProcess([], 1, "", "no such package")
    monkeypatch.setattr(subprocess, "run", lambda command, **options: failed)
    monkeypatch.setattr(environment, "_make_venv", lambda: None)
    for _ in range(2):
        with pytest.raises(SystemExit, match="no such package"):
            environment.install("run")


def test_a_machine_without_node_gets_one(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []
    monkeypatch.setattr(environment, "install", asked.append)
    monkeypatch.setenv("PATH", str(elsewhere))
    assert node.search_path().startswith(str(environment.BIN))
    assert asked == ["node"]


def test_a_taken_port_is_told_in_one_sentence() -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        with pytest.raises(CannotServe, match=f"Port {port} on 127.0.0.1 is not free"):
            Address("127.0.0.1", port).refuse_taken()
