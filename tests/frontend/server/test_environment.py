"""The environment is made once, from the lock, and a start that cannot work says so in a sentence."""

from __future__ import annotations

import re
import shutil
import socket
import subprocess
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from importlib import metadata, util
from pathlib import Path

import pytest

from frontend.server import environment, node
from frontend.server.serve import Address, CannotServe


@pytest.fixture
def elsewhere(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    (tmp_path / ".lock").mkdir()
    for name in ("run", "dev", "installer", *environment.EXTRAS):
        (tmp_path / ".lock" / f"{name}.txt").write_text("one==1\n")
    monkeypatch.setattr(environment, "ROOT", tmp_path)
    monkeypatch.setattr(environment, "VENV", tmp_path / ".venv")
    monkeypatch.setattr(environment, "BIN", tmp_path / ".venv" / "bin")
    monkeypatch.setattr(environment, "TOOLS", tmp_path / ".tools")
    return tmp_path


@pytest.fixture
def ran(monkeypatch: pytest.MonkeyPatch) -> list[list[str]]:
    """What was run to install, on a machine with the fast installer."""
    monkeypatch.setattr(shutil, "which", lambda name: f"/somewhere/{name}")
    return running(monkeypatch)


def test_an_old_python_is_told_what_is_needed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "version_info", (3, 10, 4))
    with pytest.raises(SystemExit, match=r"needs Python 3\.11 or newer; this is Python 3\.10"):
        environment.ensure("run")


def test_an_environment_with_the_locked_versions_is_used_as_it_is(elsewhere: Path) -> None:
    version = metadata.version("django")
    (elsewhere / ".lock" / "run.txt").write_text(f"django=={version} \\\n    --hash=sha256:0\n")
    environment.ensure("run")
    assert not (elsewhere / ".venv" / "bin").exists()


def test_what_is_installed_is_not_installed_again(elsewhere: Path, ran: list[list[str]]) -> None:
    lock = elsewhere / ".lock" / "run.txt"
    environment.install("run")
    environment.install("run")
    assert len(ran) == 1
    assert "--require-hashes" in ran[0]
    lock.write_text("one==2\n")
    environment.install("run")
    assert len(ran) == 2


def test_of_two_that_install_at_once_one_does(elsewhere: Path, ran: list[list[str]]) -> None:
    with ThreadPoolExecutor(2) as pool:
        list(pool.map(environment.install, ["run", "run"]))
    assert len(ran) == 1


def test_an_extra_is_installed_beside_the_program(elsewhere: Path, ran: list[list[str]]) -> None:
    environment.install("run")
    environment.install("run", "cjk")
    assert [command.count("-r") for command in ran] == [1, 2]
    environment.install("run")
    assert len(ran) == 2


def test_the_set_for_tests_holds_the_program_with_every_extra_but_the_compiled_kernel(
    elsewhere: Path, ran: list[list[str]]
) -> None:
    environment.install("dev")
    environment.install("run", *(extra for extra in environment.EXTRAS if extra != "fast"))
    assert len(ran) == 1
    environment.install("run", "fast")
    assert len(ran) == 2


def test_what_an_extra_adds_is_not_in_the_program() -> None:
    program = set(packages("run"))
    assert not program.intersection(name for each in environment.EXTRAS for name in packages(each))
    assert set(packages("dev")) >= {name for each in environment.HOLDS["dev"] for name in packages(each)}


def packages(wanted: str) -> list[str]:
    return re.findall(r"^([a-z0-9-]+)==", environment.lock_file(wanted).read_text(), re.MULTILINE)


def test_extras_are_those_asked_for_and_that_of_a_bucket(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("IMAGE_BUCKET", raising=False)
    monkeypatch.setenv("EXTRAS", "")
    assert environment.extras() == []
    monkeypatch.setenv("EXTRAS", "cjk, heic")
    assert environment.extras() == ["heic", "cjk"]
    monkeypatch.setenv("IMAGE_BUCKET", "canal")
    assert environment.extras() == ["s3", "heic", "cjk"]
    monkeypatch.setenv("EXTRAS", "jpeg")
    with pytest.raises(SystemExit, match="EXTRAS names jpeg; the extras are: s3, heic, cjk, fast"):
        environment.extras()


def test_what_the_fast_installer_cannot_bring_pip_does(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As where only pip knows the package index of a house."""
    monkeypatch.setattr(shutil, "which", lambda name: f"/somewhere/{name}")
    monkeypatch.setattr(util, "find_spec", lambda name: name)
    ran = running(monkeypatch, fails=lambda command: "/somewhere/uv" in command)
    environment.install("run")
    assert [command[: command.index("--python")] for command in ran] == [
        ["/somewhere/uv", "pip", "install"],
        [sys.executable, "-m", "pip"],
    ]
    assert all("--require-hashes" in command for command in ran)


def test_a_machine_without_the_fast_installer_gets_it_beside_what_serves(
    elsewhere: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(shutil, "which", lambda name: None)
    monkeypatch.setattr(util, "find_spec", lambda name: name)
    ran = running(monkeypatch)
    environment.install("run")
    by_pip, fast = ran
    assert {"pip", str(elsewhere / ".tools" / "bin" / "python"), "--require-hashes"} <= set(by_pip)
    assert {str(elsewhere / ".tools" / "bin" / "uv"), str(elsewhere / ".venv" / "bin" / "python")} <= set(fast)


def test_where_nothing_can_install_it_says_what_to_do(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A Python of Debian without python3-venv: neither pip nor what would bring it."""
    monkeypatch.setattr(shutil, "which", lambda name: None)
    monkeypatch.setattr(util, "find_spec", lambda name: None)
    running(monkeypatch, fails=lambda command: "ensurepip" in command)
    with pytest.raises(SystemExit, match="apt-get install python3-venv"):
        environment.install("run")


def test_an_environment_has_no_pip(elsewhere: Path) -> None:
    environment._make(environment.VENV)
    done = subprocess.run([environment.BIN / "python", "-c", "import pip"], capture_output=True, text=True, check=False)
    assert "No module named 'pip'" in done.stderr


def test_a_failed_installation_is_tried_again(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    running(monkeypatch, fails=lambda command: True)
    for _ in range(2):
        with pytest.raises(SystemExit, match="no such package"):
            environment.install("run")


def running(
    monkeypatch: pytest.MonkeyPatch, fails: Callable[[list[str]], bool] = lambda command: False
) -> list[list[str]]:
    """What would have been run, but for making environments; nothing is."""
    ran: list[list[str]] = []

    def run(command: list[str], **options: object) -> subprocess.CompletedProcess[str]:
        if "venv" not in command:
            ran.append(command)
        return subprocess.CompletedProcess(command, int(fails(command)), "", "no such package")

    monkeypatch.setattr(subprocess, "run", run)
    return ran


def test_a_machine_without_node_gets_one(elsewhere: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []
    monkeypatch.setattr(environment, "install", asked.append)
    monkeypatch.setenv("PATH", str(elsewhere))
    assert node.search_path().startswith(str(environment.TOOLS / "bin"))
    assert asked == ["node"]


def test_a_taken_port_is_told_in_one_sentence() -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        with pytest.raises(CannotServe, match=f"Port {port} on 127.0.0.1 is not free"):
            Address("127.0.0.1", port).refuse_taken()
