"""What the planner remembers, forgotten: for whoever counts or times what planning takes."""

from __future__ import annotations

from planning.tray import order
from planning.whole_tooth import canals
from planning.work import canal_work


def forget() -> None:
    """All that was worked out of canals, the forms of their orders of work and the orders at the tray."""
    for remembered in (canals.describe_once, canals.plan_once, canal_work.form_once, order.shared):
        remembered.cache_clear()
