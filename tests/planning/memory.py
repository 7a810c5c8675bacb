"""What the planner remembers of canals, forgotten: for whoever counts or times what planning them takes."""

from __future__ import annotations

from planning.whole_tooth import canals


def forget() -> None:
    canals.describe_once.cache_clear()
    canals.plan_once.cache_clear()
