"""Which size was the first to bind at a canal's end: gauged by hand after coronal flaring, never before."""

from __future__ import annotations

from planning.contract.plan_input import CanalInput, PlanInput
from planning.foundation.errors import ChoiceNotPossible
from planning.foundation.quantities import um
from planning.instruments.iso_3630 import Motion, size_above, sizes
from planning.techniques.rules import SHAPES
from planning.techniques.technique import Phase, PhaseKind


def first_binder(plan_input: PlanInput, number: int, end_um: int | None) -> int | None:
    """The first size that bound at the canal's end; None where none is known.

    As a person recorded it. Else the smallest hand size that was felt to stop short of the end between coronal flaring
    and the first shaping; where every size gauged there went to the end, the next size above them. Raises
    ChoiceNotPossible for a size that is not in the series.
    """
    canal = plan_input.canals[number]
    if canal.first_binder_size is not None:
        if canal.first_binder_size not in sizes():
            at = ("canals", number, "first_binder_size")
            raise ChoiceNotPossible(canal=canal.name, reason=f"{canal.first_binder_size} is no ISO size.", at=at)
        return canal.first_binder_size
    if end_um is None:
        return None
    # What ran loose at length before flaring was widened there by itself: that it is loose now says nothing.
    loose = loosened(plan_input) or 0
    felt = [
        (phase, size, depth_um)
        for phase in _gauging_phases(plan_input)
        for size, depth_um in _felt_by_hand(plan_input, canal, phase)
        if size > loose
    ]
    held = [size for _, size, depth_um in felt if depth_um < end_um]
    if held:
        return min(held)
    # What was worked to length tells nothing; what was only felt and not held is narrower than the canal.
    passed = [size for phase, size, _ in felt if phase.kind is PhaseKind.GAUGE]
    return size_above(max(passed)) if passed else None


def loosened(plan_input: PlanInput) -> int | None:
    """Largest size that the technique has loose at length before coronal flaring; None without flaring."""
    flare = _first(plan_input, frozenset({PhaseKind.FLARE}))
    if flare is None:
        return None
    chosen = plan_input.choices.glide_path_to_size
    before = [
        (chosen if chosen is not None else phase.to_size)
        for phase in plan_input.technique.phases[:flare]
        if phase.kind is PhaseKind.TO_LENGTH and not phase.to_estimate
    ]
    return max((size for size in before if size is not None), default=plan_input.technique.recapitulate_size)


def _gauging_phases(plan_input: PlanInput) -> tuple[Phase, ...]:
    flare = _first(plan_input, frozenset({PhaseKind.FLARE}))
    shapes = _first(plan_input, SHAPES)
    return () if flare is None else plan_input.technique.phases[flare + 1 : shapes]


def _first(plan_input: PlanInput, kinds: frozenset[PhaseKind]) -> int | None:
    return next((n for n, phase in enumerate(plan_input.technique.phases) if phase.kind in kinds), None)


def _felt_by_hand(plan_input: PlanInput, canal: CanalInput, phase: Phase) -> list[tuple[int, int]]:
    """(size, depth µm) of every hand instrument felt in a phase."""
    by_node = {
        f"{phase.key}/{instrument.size:02d}-{instrument.taper:02d}": instrument.size
        for instrument in plan_input.kit.instruments
        if instrument.motion is Motion.HAND
    }
    return [(by_node[felt.node], um(felt.depth_mm)) for felt in canal.felt if felt.node in by_node]
