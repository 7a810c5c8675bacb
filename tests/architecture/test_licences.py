"""Nothing under the GPL or the AGPL comes unasked, the LGPL with a dated reason, nothing that nobody has looked at."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Iterator
from datetime import date
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest

from tests.architecture import licences
from tests.architecture.licences import Package

JUDGED: dict[str, Any] = tomllib.loads(Path(__file__).with_name("licences.toml").read_text(encoding="utf-8"))
KNOWN = frozenset(licences.NAMES.values())
# Extras under other terms are for who asks for them by name. `fast` is large, and looked at where it is installed: the
# part of the tests of that name sees to it.
DEFAULT = ("run", "cjk", "s3", *(("fast",) if find_spec("numba") else ()))


def faults(packages: Iterable[Package]) -> list[str]:
    """A sentence for each thing that is not allowed, or that nobody judged."""
    return [f"{each.name}: {fault}" for each in packages for fault in _faults(each)]


def _faults(each: Package) -> Iterator[str]:
    if not each.licences:
        yield "says nowhere what it is under"
    for licence in each.licences - KNOWN:
        yield f"{licence} is none that is known"
    weak = any(licence.startswith("LGPL") for licence in each.licences)
    if weak and (each.name,) not in _rows("copyleft", "package"):
        yield "is under the LGPL, without a reason"
    if each.speaks_of and not weak and (each.name, each.version) not in _rows("mention", "package", "version"):
        yield "has a text that speaks of the GPL, and nobody judged it"
    for library in each.libraries:
        of = [start for start in JUDGED["libraries"] if library.startswith(f"lib{start}")]
        if not of:
            yield f"brings {library}, of which nothing is known"
        for start in of:
            if "GPL" in JUDGED["libraries"][start] and (start,) not in _rows("copyleft_library", "library"):
                yield f"brings {library} under {JUDGED['libraries'][start]}, without a reason"


def _rows(table: str, *keys: str) -> set[tuple[str, ...]]:
    return {tuple(row[key] for key in keys) for row in JUDGED[table]}


@pytest.fixture(scope="module")
def packages() -> list[Package]:
    return [licences.package(name) for each in DEFAULT for name in licences.pinned(each)]


def test_nothing_comes_that_is_not_allowed_or_that_nobody_judged(packages: list[Package]) -> None:
    assert len(packages) > 50
    assert faults(packages) == []


def test_every_judgement_has_a_day_and_a_reason_and_is_needed(packages: list[Package]) -> None:
    rows = [row for table in ("copyleft", "mention", "copyleft_library") for row in JUDGED[table]]
    assert [row for row in rows if not isinstance(row["on"], date) or len(row["reason"]) < 40] == []
    names = {(each.name,) for each in packages}
    assert _rows("copyleft", "package") | _rows("mention", "package") <= names
    brought = [library for each in packages for library in each.libraries]
    assert [start for start in JUDGED["libraries"] if not any(each.startswith(f"lib{start}") for each in brought)] == []


def test_the_wheel_with_an_encoder_under_the_gpl_is_found_by_what_it_carries() -> None:
    """It says BSD of itself; what it is under stands in a text inside it, and in the names of its libraries."""
    heic = licences.package("pillow-heif")
    assert heic.licences == {"BSD-3-Clause"}
    sentences = " ".join(faults([heic]))
    assert "has a text that speaks of the GPL" in sentences
    assert "brings libx265" in sentences
    assert "pillow-heif" in licences.pinned("heic")


@pytest.mark.parametrize(
    ("planted", "fault"),
    [
        (
            Package("x", "1", frozenset({"GPL-3.0-only"}), frozenset(), frozenset()),
            "GPL-3.0-only is none that is known",
        ),
        (
            Package("x", "1", frozenset({"AGPL-3.0-only"}), frozenset(), frozenset()),
            "AGPL-3.0-only is none that is known",
        ),
        (Package("x", "1", frozenset({"LGPL-3.0-only"}), frozenset(), frozenset()), "LGPL, without a reason"),
        (Package("x", "1", frozenset(), frozenset(), frozenset()), "says nowhere"),
        (Package("x", "1", frozenset({"MIT"}), frozenset({"strong"}), frozenset()), "speaks of the GPL"),
    ],
)
def test_a_planted_package_is_found(planted: Package, fault: str) -> None:
    (sentence,) = faults([planted])
    assert fault in sentence
