"""Which final sizes a kit can make, and which of them is proposed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from planning.contract.plan_value import SizeRange, SizeReason
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import size_above, sizes
from planning.techniques.technique import Phase, PhaseKind
from planning.tray.selection import Selection


@dataclass(frozen=True, slots=True, kw_only=True)
class KitSizes:
    """What the phases of a plan need of the kit for each final size."""

    selected: Selection
    phases: Sequence[Phase]
    step: int
    """ISO sizes from one step-back instrument to the next."""

    def lacking(self, size: int) -> tuple[str, ...]:
        """Instruments that a final size needs and the kit has not, as the trade names them; smallest first."""
        series = {needed for phase in self.phases for needed in self._of_series(phase, size)}
        hand = {needed for phase in self.phases for needed in self._by_hand(phase, size)}
        taper = self.selected.series_taper
        return (
            *(f"{each:02d}/.{taper:02d}" for each in sorted(series - set(self.selected.series))),
            *(f"hand {each:02d}" for each in sorted(hand - set(self.selected.hand))),
        )

    def _of_series(self, phase: Phase, size: int) -> Iterator[int]:
        if phase.kind is PhaseKind.ASCEND:
            smallest = self.selected.descending[-1].size
            yield from (each for each in sizes() if smallest <= each <= size)

    def _by_hand(self, phase: Phase, size: int) -> Iterator[int]:
        if phase.kind is PhaseKind.TO_LENGTH and phase.to_size is None:
            yield from (each for each in sizes() if (phase.from_size or 0) <= each <= size)
        if phase.kind in (PhaseKind.CONFIRM, PhaseKind.STEP_BACK):
            yield size
        if phase.kind is PhaseKind.STEP_BACK:
            larger = (size_above(size, number * self.step) for number in range(1, (phase.steps or 0) + 1))
            yield from (each for each in larger if each is not None)

    def within(self, advised: SizeRange) -> tuple[int, ...]:
        """The sizes of the range that the kit can make."""
        return tuple(s for s in sizes() if advised.least <= s <= advised.most and not self.lacking(s))

    def proposed(self, advised: SizeRange) -> SizeRange:
        """The range with a proposal that the kit can make: the smallest such size in it, with a reason that says so.
        The range is unchanged where the kit has the proposed size, or no size of the range.
        """
        wanted, within = advised.proposed, self.within(advised)
        # Never a size outside the advised range, even where that is the only one the kit can make.
        if wanted is None or not within or wanted in within:
            return advised
        says = (
            f"The kit has no {' and no '.join(self.lacking(wanted))} for {wanted}: {within[0]} is proposed, the "
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


def kit_sizes(selected: Selection, phases: Sequence[Phase], figures: Figures) -> KitSizes:
    return KitSizes(selected=selected, phases=phases, step=figures.count("step_back.next_size"))
