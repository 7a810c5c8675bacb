"""At its start the server says which kernel estimates depths, and none that fails keeps it from serving."""

from __future__ import annotations

import os
import stat
import subprocess
import sys
import tempfile
from importlib.util import find_spec
from pathlib import Path

import pytest

from frontend.server import env, kernel
from frontend.server.env import Environment
from planning.depth import kernel as of_planner
from planning.depth import numpy_rows


@pytest.fixture(autouse=True)
def extra_installed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DEPTH_KERNEL", "")
    monkeypatch.setattr(env, "find_spec", lambda name: name)
    monkeypatch.setattr(of_planner, "running", numpy_rows)


def compiling(monkeypatch: pytest.MonkeyPatch, *, ends_with: int) -> None:
    done = subprocess.CompletedProcess([], ends_with, "", "no such function\n")
    monkeypatch.setattr(subprocess, "run", lambda command, **options: done)


def test_without_the_extra_it_is_numpys_and_nothing_is_started(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(env, "find_spec", lambda name: None)
    monkeypatch.setattr(subprocess, "run", None)
    assert kernel.prepare() == "Depths are estimated by numpy."


def test_with_the_extra_it_is_the_compiled_one_but_where_it_is_turned_off(monkeypatch: pytest.MonkeyPatch) -> None:
    compiling(monkeypatch, ends_with=0)
    assert kernel.prepare() == "Depths are estimated by the compiled kernel."
    monkeypatch.setenv("DEPTH_KERNEL", "numpy")
    monkeypatch.setattr(subprocess, "run", None)
    assert kernel.prepare() == "Depths are estimated by numpy."
    kernel.take()
    assert of_planner.running is numpy_rows


def test_one_that_does_not_compile_is_left_alone_by_the_server_that_follows(monkeypatch: pytest.MonkeyPatch) -> None:
    compiling(monkeypatch, ends_with=-11)
    sentence = kernel.prepare()
    assert sentence.startswith("no such function\nDepths are estimated by numpy.")
    assert os.environ["DEPTH_KERNEL"] == "numpy"
    assert not Environment().compiled


@pytest.fixture
def nowhere_usual(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    """Nothing can be kept where it usually is; returns the folder for temporary files."""
    compiling(monkeypatch, ends_with=0)
    # Set first, so that what the start sets is undone after the test.
    monkeypatch.setenv("NUMBA_CACHE_DIR", "")
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    no_folder = tmp_path / "a file"
    no_folder.touch()
    monkeypatch.setattr(kernel, "_usual", lambda: (no_folder / "__pycache__", no_folder / "numba"))
    return tmp_path


def test_where_nothing_can_be_kept_it_is_kept_with_temporary_files_and_found_again(nowhere_usual: Path) -> None:
    kernel.prepare()
    folder = Path(os.environ.pop("NUMBA_CACHE_DIR"))
    assert folder.parent == nowhere_usual
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700
    kernel.prepare()
    assert os.environ["NUMBA_CACHE_DIR"] == str(folder)


@pytest.mark.parametrize("taken", ["open to all", "a link"])
def test_a_folder_that_others_may_have_filled_is_not_taken(nowhere_usual: Path, taken: str) -> None:
    theirs = nowhere_usual / f"depth-kernel-{os.getuid()}"
    if taken == "a link":
        (nowhere_usual / "elsewhere").mkdir(mode=0o700)
        theirs.symlink_to(nowhere_usual / "elsewhere")
    else:
        theirs.mkdir()
        theirs.chmod(0o777)
    kernel.prepare()
    folder = Path(os.environ["NUMBA_CACHE_DIR"])
    assert folder != theirs
    assert stat.S_IMODE(folder.lstat().st_mode) == 0o700


def test_where_something_can_be_kept_or_a_folder_is_named_it_stays_there(
    monkeypatch: pytest.MonkeyPatch, nowhere_usual: Path
) -> None:
    monkeypatch.setenv("NUMBA_CACHE_DIR", "named")
    kernel.prepare()
    assert os.environ["NUMBA_CACHE_DIR"] == "named"
    monkeypatch.setenv("NUMBA_CACHE_DIR", "")
    monkeypatch.setattr(kernel, "_usual", lambda: (nowhere_usual / "a file" / "numba", nowhere_usual / "cache"))
    kernel.prepare()
    assert not os.environ["NUMBA_CACHE_DIR"]


def test_one_that_is_asked_for_and_not_installed_is_named(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("DEPTH_KERNEL", "compiled")
    assert Environment().missing() == []
    monkeypatch.setattr(env, "find_spec", lambda name: None)
    (missing,) = Environment().missing()
    assert missing == "DEPTH_KERNEL=compiled needs more packages: start with EXTRAS=fast."


@pytest.mark.skipif(not find_spec("numba"), reason="its extra is not installed")
def test_a_process_that_computes_takes_the_compiled_one() -> None:
    taken = "from frontend.server.front import computing; from planning.depth import kernel; print(kernel.running)"
    done = subprocess.run([sys.executable, "-c", taken], capture_output=True, text=True, check=True)
    assert "compiled_rows" in done.stdout
