"""A reading or an image that was a mistake is struck, not erased."""

from __future__ import annotations

from enum import StrEnum


class StruckWhy(StrEnum):
    """Why a reading or an image no longer counts. A choice, not a text: into a text somebody might write a name."""

    WRONG_CANAL = "wrong_canal"
    MISTYPED = "mistyped"
    NOT_SO = "not_so"
    """It was not measured as it says; an image does not show what it was taken for."""
