"""The compiled kernel against numpy's, to the last bit, which is more than the hundredth of a millimetre asked of it.

`test_contact_rows` holds numpy's against the exact estimate. Where the extra is not installed the same code runs as
Python, which rounds alike and is slow: so it draws less.
"""

from __future__ import annotations

import random
import subprocess
import sys
from dataclasses import replace
from importlib import import_module
from importlib.util import find_spec
from types import SimpleNamespace
from typing import Any
from unittest.mock import patch

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import planning.depth
from planning.contract.plan_input import PlanInput
from planning.depth import contact_rows, kernel, numpy_rows
from planning.depth.kernel import Kernel
from planning.depth.rows import Rows, Tools
from planning.foundation.encoding import canonical_text
from planning.foundation.errors import PlanningError
from tests.draws import draws
from tests.planning.given import molar
from tests.planning.test_contact_depth import random_canal, random_instrument
from tests.planning.test_contact_rows import COUNT, as_rows, as_tools
from tests.planning.test_properties import inputs
from tests.planning.test_work_bound import ZIGZAG, felt_everywhere, planned_anew

INSTALLED = find_spec("numba") is not None
UNCOMPILED = (
    {} if INSTALLED else {"numba": SimpleNamespace(njit=lambda signature, **options: lambda function: function)}
)
ONLY_COMPILED = pytest.mark.skipif(not INSTALLED, reason="its extra is not installed")
SAMPLES = 100 if INSTALLED else 10
DEEPEST_MM = 20.0


def imported() -> Any:
    """The compiled kernel; as Python it is nobody else's."""
    with patch.dict(sys.modules, UNCOMPILED):
        module = import_module("planning.depth.compiled_rows")
    if not INSTALLED:
        del planning.depth.compiled_rows
    return module


def share(whole: int) -> int:
    return draws(whole) if INSTALLED else draws(whole, 40)


compiled_rows = imported()


@pytest.fixture(autouse=True)
def numpy_runs_afterwards(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(kernel, "running", numpy_rows)


# 50 times 40 canals, each worked by three instruments: 2,000 cases of each.
@pytest.mark.parametrize("seed", range(share(50)))
def test_an_instrument_rests_where_it_does_by_numpy_and_leaves_the_same(seed: int) -> None:
    rng = random.Random(seed)  # noqa: S311  # nothing secret
    canals = as_rows([random_canal(rng) for _ in range(COUNT)])
    limits = np.array([rng.choice((0.02, 0.05, 0.1, 0.15, 0.3)) for _ in range(COUNT)])
    overcuts = np.array([rng.uniform(0, 0.03) for _ in range(COUNT)])
    for _ in range(3):
        tools, stops = as_tools(random_instrument(rng)), canals.depth_mm[:, -1]
        kernel.running = compiled_rows
        rests = contact_rows.rest_mm(tools, canals, stops, limits)
        kernel.running = numpy_rows
        assert np.array_equal(rests, contact_rows.rest_mm(tools, canals, stops, limits))
        left = compiled_rows.stood(tools, canals, rests, overcuts)
        canals = numpy_rows.stood(tools, canals, rests, overcuts)
        assert np.array_equal(left.depth_mm, canals.depth_mm)
        assert np.array_equal(left.wide_mm, canals.wide_mm)


# How numpy adds up follows from how many terms there are: by eights, and beyond 128 in halves.
@pytest.mark.parametrize("corners", range(2, 200, 1 if INSTALLED else 9))
def test_loads_are_added_up_as_by_numpy_however_many_corners_there_are(corners: int) -> None:
    rng = np.random.default_rng(corners)
    depth = np.sort(rng.uniform(0, DEEPEST_MM, (COUNT, corners)), axis=1)
    canals = Rows(depth, rng.uniform(0.05, 0.6, (COUNT, corners)))
    tools = Tools(np.array([0.0, 16.0]), np.array([0.25, 1.2]) + rng.uniform(0, 0.2, (COUNT, 1)))
    tips, limits = rng.uniform(0, DEEPEST_MM, COUNT), rng.uniform(0, 0.2, COUNT)
    loads = numpy_rows.load_mm2(tools, canals, tips)
    assert np.count_nonzero(loads) > COUNT / 4
    assert np.array_equal(compiled_rows.load_mm2(tools, canals, tips), loads)
    halved = numpy_rows.halved_mm(tools, canals, tips, limits)
    assert np.array_equal(compiled_rows.halved_mm(tools, canals, tips, limits), halved)


def outcome(plan_input: PlanInput, running: Kernel) -> str:
    kernel.running = running
    try:
        return canonical_text(planned_anew(plan_input))
    except PlanningError as refusal:
        return str(refusal)


@settings(max_examples=share(200), deadline=None, suppress_health_check=list(HealthCheck))
@given(inputs(), st.integers(0, 2**64 - 1), st.booleans())
def test_whole_plans_are_the_same_to_the_byte(plan_input: PlanInput, seed: int, narrows: bool) -> None:
    widths = ZIGZAG[::6] if narrows else ()
    canals = tuple(replace(canal_input, widths=widths) for canal_input in plan_input.canals)
    sampled = replace(plan_input, canals=canals, samples=SAMPLES, seed=seed)
    assert outcome(sampled, compiled_rows) == outcome(sampled, numpy_rows)


@pytest.mark.parametrize("seed", range(share(12)))
def test_so_are_plans_that_learned_from_a_depth_at_every_insertion(seed: int) -> None:
    learned = replace(felt_everywhere(molar(), samples=SAMPLES), seed=seed)
    assert outcome(learned, compiled_rows) == outcome(learned, numpy_rows)


@ONLY_COMPILED
def test_what_has_no_folder_to_be_kept_in_is_compiled_all_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    njit = compiled_rows.numba.njit

    def nowhere(signature: str, *, cache: bool = False, **options: str) -> object:
        if cache:
            raise RuntimeError("cannot cache function: no locator available")
        return njit(signature, **options)

    monkeypatch.setattr(compiled_rows.numba, "njit", nowhere)

    def twice(number: float) -> float:
        return 2 * number

    assert compiled_rows._compiled("f8(f8)")(twice)(0.75) == 1.5


@ONLY_COMPILED
def test_nothing_of_it_is_loaded_unasked() -> None:
    loaded = "import sys, planning.whole_tooth.plan; print('numba' in sys.modules)"
    done = subprocess.run([sys.executable, "-c", loaded], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"
