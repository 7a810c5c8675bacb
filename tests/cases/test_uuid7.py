"""Identifiers, held against the example of the standard."""

from __future__ import annotations

import json
from pathlib import Path
from uuid import RFC_4122

import pytest

from cases.domain.uuid7 import uuid7, uuid7_of

VECTORS = json.loads((Path(__file__).parents[1] / "shared" / "uuid7.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("vector", VECTORS["vectors"], ids=lambda vector: vector["says"])
def test_the_shared_vectors(vector: dict[str, str]) -> None:
    made = uuid7_of(int(vector["unix_ms"]), int(vector["random_hex"], 16))
    assert str(made) == vector["uuid"]


def test_new_ones_are_version_7_and_differ() -> None:
    made = {uuid7() for _ in range(1000)}
    assert len(made) == 1000
    assert all(id_.version == 7 and id_.variant == RFC_4122 for id_ in made)
