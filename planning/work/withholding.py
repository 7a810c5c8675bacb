"""Which phases of a canal are open: what is withheld is left out of its order of work, with the reason."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from planning.contract.cautions import Withholds, catalogue
from planning.contract.plan_value import Caution, Withheld
from planning.techniques.technique import Phase, PhaseKind

JUDGED_WHOLE = frozenset({Withholds.CANAL, Withholds.SHAPING, Withholds.SIZING, Withholds.FILLING})
"""What a supervisor decides on who has to see what the work would be: all phases are tabled."""


def open_phases(every: Sequence[Phase], held: Sequence[Caution]) -> tuple[Sequence[Phase], tuple[Withheld, ...]]:
    """The phases that may be worked now, and what withholds the rest, the strictest reason first."""
    opening = sorted(((_opening(every, _withholds(caution)), caution) for caution in held), key=lambda pair: pair[0])
    withheld = tuple(
        Withheld(
            from_phase=every[first].key if first < len(every) and _withholds(caution) is not Withholds.TOOTH else "",
            code=caution.code,
            says=f"{caution.says} {caution.do}",
        )
        for first, caution in opening
    )
    return every[: opening[0][0]] if opening else every, withheld


def shown_whole(held: Sequence[Caution]) -> bool:
    """Whether the stops of all phases are tabled although some are withheld."""
    # The stops of an estimated length are tabled too, marked provisional: the plan is judged before the first image.
    return all(_withholds(caution) in JUDGED_WHOLE or caution.code == "length-estimated" for caution in held)


def without_size(every: Sequence[Phase]) -> Sequence[Phase]:
    """The phases that can be written while no final size has been chosen."""
    return every[: _opening(every, Withholds.SIZING)]


def _anything(phase: Phase) -> bool:
    return True


def _works(phase: Phase) -> bool:
    """Whether the phase goes further than exploring to the estimate."""
    return phase.kind is not PhaseKind.SIGN_OFF and not phase.to_estimate


def _goes_on(phase: Phase) -> bool:
    """Whether the phase goes further than hand sizes to length."""
    return phase.kind not in (PhaseKind.SIGN_OFF, PhaseKind.TO_LENGTH)


def shapes(phase: Phase) -> bool:
    """Whether the phase enlarges the canal: hand sizes up to the final one do, a glide path does not."""
    return _goes_on(phase) or (_works(phase) and phase.to_size is None)


def _sizes(phase: Phase) -> bool:
    """Whether the phase goes by the final size: coronal flaring, the gauging that follows it, and rinsing do not."""
    return shapes(phase) and phase.kind not in (PhaseKind.FLARE, PhaseKind.GAUGE, PhaseKind.RINSE)


def fills(phase: Phase) -> bool:
    return phase.kind is PhaseKind.FILL


CLOSED: Mapping[Withholds, Callable[[Phase], bool]] = {
    Withholds.TOOTH: _anything,
    Withholds.CANAL: _anything,
    Withholds.AFTER_LENGTH: _works,
    Withholds.PAST_GLIDE_PATH: _goes_on,
    Withholds.SHAPING: shapes,
    Withholds.SIZING: _sizes,
    Withholds.FILLING: fills,
}
"""By what a caution withholds: the first phase for which this is true is closed, with all that follow it."""


def _withholds(caution: Caution) -> Withholds:
    return catalogue()[caution.code].withholds or Withholds.CANAL


def _opening(every: Sequence[Phase], withholds: Withholds) -> int:
    """How many phases stay open."""
    closed = CLOSED[withholds]
    return next((number for number, phase in enumerate(every) if closed(phase)), len(every))
