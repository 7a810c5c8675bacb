"""Lengths as whole micrometres inside, millimetres outside; how a stop is rounded.

A length in floating millimetres can come out a hair too small and then lose half a millimetre when it is
rounded down. Whole micrometres cannot.
"""

from __future__ import annotations

UM_PER_MM = 1000
UM_PER_HUNDREDTH_MM = 10
HUNDREDTHS_PER_MM = 100
HALF_MM_UM = 500  # stops are set to half a millimetre: the finest mark on an endodontic ruler


def um(mm: float) -> int:
    """Whole micrometres of a length in millimetres, taken to 0.01 mm first."""
    # No length is kept more finely: below a hundredth there is only the rounding error of doubles.
    return round(mm * HUNDREDTHS_PER_MM) * UM_PER_HUNDREDTH_MM


def mm(um_: int) -> float:
    """Millimetres of whole micrometres."""
    return um_ / UM_PER_MM


def stop_um(length_um: int) -> int:
    """The stop for a length [µm]: down to half a millimetre.

    Rounded down, never up: a stop set long lets the instrument past the end.
    """
    return length_um // HALF_MM_UM * HALF_MM_UM


def hundredth_below(length_mm: float) -> float:
    """Down to a hundredth of a millimetre, as finely as a wall is published: what is left is never said to be more
    than it is."""
    whole_um = round(length_mm * UM_PER_MM)  # rid of what doubles leave
    return mm(whole_um // UM_PER_HUNDREDTH_MM * UM_PER_HUNDREDTH_MM)


def in_mm(um_: int) -> str:
    """Millimetres for a sentence: at least one decimal, no more than needed."""
    text = f"{um_ / UM_PER_MM:.2f}".rstrip("0")
    return text + "0" if text.endswith(".") else text
