"""Which phases of a technique a setting has, and at which of them a supervisor and an image are asked for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from planning.contract.plan_input import PlanInput
from planning.foundation.tables import Figures
from planning.techniques.technique import Phase, PhaseKind, Setting, Technique

MOST_KEPT = 100  # techniques in their settings, as lists of phases


def phases_of(plan_input: PlanInput) -> tuple[Phase, ...]:
    """The phases of the setting, each with the hold point that is asked for there.

    A phase whose hold point is not asked for keeps what is worked in it. It keeps its image only where that shows a
    length, and the student judges that alone. The hold point of the cone is then about the final size too.
    """
    more = Figures(plan_input.thresholds)["sign_offs.bench_more"] >= 1
    return _phases_of(plan_input.technique, plan_input.setting, more)


@lru_cache(maxsize=MOST_KEPT)
def _phases_of(technique: Technique, setting: Setting, more: bool) -> tuple[Phase, ...]:
    here = [phase for phase in technique.phases if setting in phase.settings]
    unasked = [phase for phase in here if not (more or setting in phase.hold_point_in)]
    return tuple(_asked(here, unasked))


def _asked(here: list[Phase], unasked: list[Phase]) -> Iterator[Phase]:
    sizes = [phase.hold_point for phase in unasked if phase.kind is PhaseKind.CONFIRM and phase.hold_point]
    for phase in here:
        if phase in unasked:
            if phase.kind is not PhaseKind.SIGN_OFF:
                yield replace(phase, hold_point=None, image=False)
            elif phase.image:
                yield replace(phase, hold_point=None)
        elif phase.kind is PhaseKind.CONE and sizes:
            yield replace(phase, hold_point=" and ".join((phase.hold_point or "cone", *sizes)))
        else:
            yield phase
