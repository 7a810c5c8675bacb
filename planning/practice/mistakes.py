"""Mistakes in practice: what each comes to, with a sentence why. The sentences are rows of data."""

from __future__ import annotations

from dataclasses import dataclass

from planning.foundation.tables import rows


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeMistake:
    """One mistake and its consequence."""

    code: str
    says: str
    harms: bool
    """The canal is the worse for it."""
    source: str
    know: str


def mistake(code: str, **filled: float) -> PracticeMistake:
    """The row of this code with its braces filled, in hundredths of a millimetre."""
    row = next(row for row in rows("practice_mistakes") if row["code"] == code)
    says = row["says"].format(**{name: f"{value:.2f}" for name, value in filled.items()})
    return PracticeMistake(code=code, says=says, harms=row["harms"] == "yes", source=row["source"], know=row["know"])
