"""One place chooses the kernel, and the estimate goes by it."""

from __future__ import annotations

import sys
from collections import Counter
from types import ModuleType
from typing import Any

import pytest

import planning.depth
from planning.depth import kernel, numpy_rows
from tests.planning.given import molar
from tests.planning.test_work_bound import planned_anew

COMPILED = "planning.depth.compiled_rows"


@pytest.fixture(autouse=True)
def numpy_runs(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(kernel, "running", numpy_rows)
    monkeypatch.delattr(planning.depth, "compiled_rows", raising=False)


def test_without_the_extra_numpy_goes_on(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delitem(sys.modules, COMPILED, raising=False)
    monkeypatch.setitem(sys.modules, "numba", None)  # as where it is not installed
    assert not kernel.take_compiled()
    assert kernel.running is numpy_rows


def test_a_kernel_that_is_taken_does_all_of_the_estimates_hot_work(monkeypatch: pytest.MonkeyPatch) -> None:
    calls: Counter[str] = Counter()
    counting = ModuleType(COMPILED)

    def counted(name: str) -> Any:
        def call(*arguments: Any) -> Any:
            calls[name] += 1
            return getattr(numpy_rows, name)(*arguments)

        return call

    for name in ("load_mm2", "halved_mm", "stood"):
        setattr(counting, name, counted(name))
    monkeypatch.setitem(sys.modules, COMPILED, counting)
    assert kernel.take_compiled()
    planned_anew(molar(samples=20))
    assert set(calls) == {"load_mm2", "halved_mm", "stood"}
