"""What makes a technique unusable: phases that contradict each other, that never end or that leave out what keeps a
canal safe. Every fault says what to do."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from planning.foundation.counts import at_most
from planning.foundation.errors import Pointer
from planning.instruments.iso_3630 import sizes
from planning.techniques.technique import Phase, PhaseKind, Setting, Technique

Fault = tuple[Pointer, str]
"""Where in the technique, and the sentence."""

MOST_PHASES = at_most("phases").most
MOST_PASSES = at_most("passes").most
NEEDS: Mapping[PhaseKind, tuple[str, ...]] = {
    PhaseKind.SIGN_OFF: ("hold_point",),
    PhaseKind.TO_LENGTH: ("from_size",),
    PhaseKind.DESCEND: ("repeat_from", "most_passes", "expected_passes"),
    PhaseKind.STEP_BACK: ("steps", "step_mm"),
    PhaseKind.CONFIRM: ("hold_point",),
    PhaseKind.CONE: ("hold_point",),
    PhaseKind.FILL: ("hold_point",),
}
"""What a phase of each kind must state. A descending phase that states no number of passes would have no end."""
CUTS = (PhaseKind.TO_LENGTH, PhaseKind.FLARE, PhaseKind.DESCEND, PhaseKind.ASCEND, PhaseKind.STEP_BACK)
SHAPES = frozenset({PhaseKind.DESCEND, PhaseKind.ASCEND, PhaseKind.STEP_BACK})
"""Once one of these has been worked, a hand size gauges what it prepared."""
AFTER_RINSING = (PhaseKind.CONE, PhaseKind.FILL)


def faults(technique: Technique) -> Iterator[Fault]:
    """All that is wrong, phase by phase; nothing for a technique that can be used."""
    yield from _of_the_whole(technique)
    if len(technique.phases) > MOST_PHASES:
        return
    for number, phase in enumerate(technique.phases):
        for field, says in _of_phase(phase, technique.phases[:number], technique):
            yield ("phases", number, *field), f"phase '{phase.key}': {says}"
    for setting in Setting:
        here = [(n, phase) for n, phase in enumerate(technique.phases) if setting in phase.settings]
        for number, says in _out_of_order(here, setting):
            yield ("phases", number), f"phase '{technique.phases[number].key}', setting '{setting}': {says}"


def _of_the_whole(technique: Technique) -> Iterator[Fault]:
    if not technique.phases:
        yield ("phases",), "it has no phases. Copy those of a technique that is provided and change them."
    if len(technique.phases) > MOST_PHASES:
        yield ("phases",), f"it has more than {MOST_PHASES} phases. Put some together."
    if not technique.motions:
        yield ("motions",), "it is written for no motion. Name at least one."
    if technique.recapitulate_size not in sizes():
        yield ("recapitulate_size",), f"{technique.recapitulate_size} is no ISO size."
    if technique.series_above_glide_path < 1:
        yield ("series_above_glide_path",), "the series starts at least one size above the glide path."
    if not 0 <= technique.series_sizes_up <= len(sizes()):
        yield ("series_sizes_up",), "the series goes up, not down, and has no more sizes than there are."


# --- one phase -----------------------------------------------------------------------------------------------------


def _of_phase(phase: Phase, earlier: Sequence[Phase], technique: Technique) -> Iterator[tuple[tuple[str, ...], str]]:
    """Faults of one phase with the field they are in."""
    lacking = [name for name in NEEDS.get(phase.kind, ()) if getattr(phase, name) is None]
    if lacking:
        yield (), f"a phase of kind '{phase.kind}' must state {' and '.join(lacking)}."
    if any(phase.key == other.key for other in earlier):
        yield ("key",), "the key is taken by an earlier phase. Choose another."
    if not phase.settings:
        yield ("settings",), "it is for no setting. Leave `settings` out, or name some."
    yield from _counts(phase)
    yield from _sizes(phase, technique)


def _counts(phase: Phase) -> Iterator[tuple[tuple[str, ...], str]]:
    for name in ("most_passes", "expected_passes", "steps"):
        count = getattr(phase, name)
        if count is not None and not 1 <= count <= MOST_PASSES:
            yield (name,), f"{name} must be above 0 and at most {MOST_PASSES}: whatever repeats has to end."
    if phase.step_mm is not None and phase.step_mm <= 0:
        yield ("step_mm",), "step_mm must be above 0."
    # Where no most is stated, nothing can exceed it.
    if (phase.expected_passes or 0) > (phase.most_passes or phase.expected_passes or 0):
        yield ("expected_passes",), "more passes are expected than allowed."


def _sizes(phase: Phase, technique: Technique) -> Iterator[tuple[tuple[str, ...], str]]:
    small = technique.recapitulate_size
    for name in ("from_size", "to_size"):
        size = getattr(phase, name)
        if size is not None and size not in sizes():
            yield (name,), f"from_size and to_size must be ISO sizes; {size} is none."
    if phase.to_size is not None and (phase.from_size or 0) > phase.to_size:
        yield ("from_size",), "from_size lies above to_size."
    if phase.kind is not PhaseKind.TO_LENGTH or phase.from_size is None:
        return
    # The length is not confirmed yet: anything larger could cut beyond the canal's end.
    if phase.to_estimate and (phase.to_size is None or phase.to_size > small):
        reason = f"to an estimated length nothing larger than the recapitulating size goes: set to_size = {small:02d}"
        yield ("to_estimate",), f"{reason} at most, or put it after the length is signed off."
    if not phase.to_estimate and phase.from_size < small:
        says = f"it starts below size {small:02d}, which recapitulates: smaller sizes would not be recapitulated after."
        yield ("from_size",), f"{says} Start at {small:02d}, or recapitulate with a smaller size."


# --- phases in their order -----------------------------------------------------------------------------------------


def cuts(phase: Phase) -> bool:
    """Whether the phase works further than exploring to the estimate."""
    return phase.kind in CUTS and not phase.to_estimate


def _out_of_order(here: Sequence[tuple[int, Phase]], setting: Setting) -> Iterator[tuple[int, str]]:
    """Phases of one setting that do not follow from those before them: number and reason."""
    kinds = [phase.kind for _, phase in here]
    for place, (number, phase) in enumerate(here):
        before = [earlier for _, earlier in here[:place]]
        if phase.kind in (PhaseKind.DESCEND, PhaseKind.ASCEND) and phase.kind in kinds[:place]:
            yield number, f"there is an earlier phase of kind '{phase.kind}'. Keep one."
        if phase.kind is PhaseKind.DESCEND and PhaseKind.ASCEND not in kinds[place:]:
            yield number, "a descending phase needs an ascending one after it."
        if phase.kind is PhaseKind.ASCEND and PhaseKind.DESCEND not in kinds[:place]:
            yield number, "an ascending phase needs a descending one before it."
        if phase.kind is PhaseKind.GAUGE and not _gauges_flared(kinds[:place]):
            yield number, "it gauges what coronal flaring has laid open. Put it after flaring and before what shapes."
        if phase.repeat_from is not None and phase.repeat_from not in [earlier.key for earlier in before]:
            yield number, f"it repeats from '{phase.repeat_from}', which is no earlier phase of this setting."
        if phase.kind in AFTER_RINSING and _unrinsed(before):
            yield number, "the canal has not been rinsed since it was shaped. Put a phase of kind 'rinse' before it."
    yield from _unsafe(here, setting)


def _gauges_flared(before: Sequence[PhaseKind]) -> bool:
    return PhaseKind.FLARE in before and not SHAPES & set(before)


def _signs_length(phase: Phase, setting: Setting) -> bool:
    return phase.kind is PhaseKind.SIGN_OFF and phase.image and setting in phase.hold_point_in


def _unsafe(here: Sequence[tuple[int, Phase]], setting: Setting) -> Iterator[tuple[int, str]]:
    cutting = [place for place, (_, phase) in enumerate(here) if cuts(phase)]
    if not cutting:
        return
    first, last = cutting[0], cutting[-1]
    if not any(_signs_length(phase, setting) for _, phase in here[:first]):
        yield (
            here[first][0],
            "it goes to length before any length is signed off. Put a phase of kind 'sign_off' with image = true "
            "before it.",
        )
    if _unrinsed([phase for _, phase in here]) and not any(p.kind in AFTER_RINSING for _, p in here[last:]):
        yield here[last][0], "no rinse follows it. Put a phase of kind 'rinse' after it."


def _unrinsed(phases: Sequence[Phase]) -> bool:
    """Whether something cut after the last rinse."""
    for phase in reversed(phases):
        if phase.kind is PhaseKind.RINSE:
            return False
        if cuts(phase):
            return True
    return False
