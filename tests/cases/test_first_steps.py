"""What can be recorded of an emergency or a pause has its first steps, and nothing else has."""

from __future__ import annotations

from typing import get_args

import pytest

from cases.domain.events.payloads import WhatHappened, WhatPauses
from cases.domain.progress.emergencies import SALINE_AFTER
from planning.contract.chairside import Guidance, at_the_chair
from planning.foundation.tables import Figures

ADVICE = at_the_chair(Figures()).advice


def keys(about: Guidance) -> set[str]:
    return {entry.key for entry in ADVICE if entry.about is about}


def test_every_emergency_and_every_pause_has_its_first_steps() -> None:
    assert keys(Guidance.EMERGENCY) == set(get_args(WhatHappened))
    assert keys(Guidance.PAUSE) == set(get_args(WhatPauses))


@pytest.mark.parametrize("what", get_args(WhatHappened))
def test_saline_alone_is_told_exactly_where_it_is_all_that_goes_in(what: str) -> None:
    saline_only = any(
        "saline only" in entry.says for entry in ADVICE if (entry.about, entry.key) == (Guidance.EMERGENCY, what)
    )
    assert saline_only == (what in SALINE_AFTER)
