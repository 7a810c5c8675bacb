"""A reading or an image that was a mistake is struck, not erased."""

from __future__ import annotations

from enum import StrEnum


class StruckWhy(StrEnum):
    """Why it counts no more. Words, not a text: in one somebody would write down who it was."""

    WRONG_CANAL = "wrong_canal"
    MISTYPED = "mistyped"
    NOT_SO = "not_so"
    """It was not measured as it says; an image does not show what it was taken for."""
