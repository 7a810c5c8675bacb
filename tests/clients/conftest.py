"""The cast of the records' tests."""

from __future__ import annotations

from tests.cast import *  # noqa: F403
