"""Which final sizes a kit can make, and which of them is proposed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from planning.contract.plan_value import SizeRange, SizeReason
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import size_above, sizes
from planning.techniques.technique import Phase, PhaseKind
from planning.tray.selection import Selection

MOST_KEPT = 64  # kits in their techniques


@dataclass(frozen=True, slots=True, kw_only=True)
class KitSizes:
    """What the kit lacks for each final size."""

    lacks: Mapping[int, tuple[str, ...]]
    """By ISO size, as the trade names them; smallest first."""

    def within(self, advised: SizeRange) -> tuple[int, ...]:
        """The sizes of the range that the kit can make."""
        return tuple(s for s in sizes() if advised.least <= s <= advised.most and not self.lacks[s])

    def proposed(self, advised: SizeRange) -> SizeRange:
        """The range with a proposal that the kit can make: the smallest such size in it, with a reason that says so.
        The range is unchanged where the kit has the proposed size, or no size of the range.
        """
        wanted, within = advised.proposed, self.within(advised)
        # Never a size outside the advised range, even where that is the only one the kit can make.
        if wanted is None or not within or wanted in within:
            return advised
        says = (
            f"The kit has no {' and no '.join(self.lacks[wanted])} for {wanted}: {within[0]} is proposed, the "
            f"smallest from {advised.least} to {advised.most} that it can make."
        )
        reason = SizeReason(
            code="kit",
            bound="tells",
            size=within[0],
            says=says,
            row="",
            source="the kit of this plan",
            know="programme rule",
        )
        return replace(advised, proposed=within[0], reasons=(*advised.reasons, reason))


def kit_sizes(selected: Selection, phases: tuple[Phase, ...], figures: Figures) -> KitSizes:
    """What the phases need of the kit for each final size, and it has not."""
    return _kit_sizes(selected, phases, figures.count("step_back.next_size"))


@lru_cache(maxsize=MOST_KEPT)
def _kit_sizes(selected: Selection, phases: tuple[Phase, ...], step: int) -> KitSizes:
    return KitSizes(lacks={size: _lacking(selected, phases, step, size) for size in sizes()})


def _lacking(selected: Selection, phases: tuple[Phase, ...], step: int, size: int) -> tuple[str, ...]:
    """`step`: ISO sizes from one step-back instrument to the next."""
    series = {needed for phase in phases for needed in _of_series(selected, phase, size)}
    hand = {needed for phase in phases for needed in _by_hand(phase, step, size)}
    taper = selected.series_taper
    return (
        *(f"{each:02d}/.{taper:02d}" for each in sorted(series - set(selected.series))),
        *(f"hand {each:02d}" for each in sorted(hand - set(selected.hand))),
    )


def _of_series(selected: Selection, phase: Phase, size: int) -> Iterator[int]:
    if phase.kind is PhaseKind.ASCEND:
        smallest = selected.descending[-1].size
        yield from (each for each in sizes() if smallest <= each <= size)


def _by_hand(phase: Phase, step: int, size: int) -> Iterator[int]:
    if phase.kind is PhaseKind.TO_LENGTH and phase.to_size is None:
        yield from (each for each in sizes() if (phase.from_size or 0) <= each <= size)
    if phase.kind in (PhaseKind.CONFIRM, PhaseKind.STEP_BACK):
        yield size
    if phase.kind is PhaseKind.STEP_BACK:
        larger = (size_above(size, number * step) for number in range(1, (phase.steps or 0) + 1))
        yield from (each for each in larger if each is not None)
