"""At its start the server says which kernel estimates depths, and none that fails keeps it from serving."""

from __future__ import annotations

import os
import subprocess
import sys
from importlib.util import find_spec

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
