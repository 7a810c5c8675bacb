"""How many of a thing a value may hold. The numbers are this program's own: no source."""

from __future__ import annotations

from dataclasses import replace

import pytest

from planning.contract.canal_facts import WidthInput
from planning.foundation.counts import at_most, refuse_too_many
from planning.foundation.errors import TooMuchWork
from tests.planning.given import four_canals


def test_what_did_not_come_from_outside_is_counted_too() -> None:
    """Records hand over values that nobody has decoded."""
    canals = four_canals()
    most = at_most("widths").most
    width = WidthInput(from_end_mm=1.0, narrow_mm=0.3)
    refuse_too_many((*canals[:2], replace(canals[2], widths=(width,) * most)))
    with pytest.raises(TooMuchWork, match=rf"^{most + 1} widths are more than the {most} that one") as refused:
        refuse_too_many((*canals[:2], replace(canals[2], widths=(width,) * (most + 1))))
    assert refused.value.pointer == (2, "widths")
