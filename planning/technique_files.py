"""Techniques from text: those provided in `data/techniques`, and a programme's own."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping, Sequence
from functools import cache

from planning.encoding import decode
from planning.errors import NotUnderstood, TechniqueNotUsable
from planning.instruments import sizes
from planning.tables import DATA
from planning.techniques import Phase, PhaseKind, Setting, Technique

NEEDS: Mapping[PhaseKind, tuple[str, ...]] = {
    PhaseKind.SIGN_OFF: ("hold_point",),
    PhaseKind.TO_LENGTH: ("from_size",),
    PhaseKind.DESCEND: ("repeat_from", "most_passes", "expected_passes"),
    PhaseKind.STEP_BACK: ("steps", "step_mm"),
    PhaseKind.CONFIRM: ("hold_point",),
    PhaseKind.CONE: ("hold_point",),
    PhaseKind.FILL: ("hold_point",),
}
"""What a phase of each kind must state."""


@cache
def provided() -> Mapping[str, Technique]:
    """The techniques that come with the planner, by key."""
    files = sorted((DATA / "techniques").glob("*.toml"))
    found = [read(path.read_text(encoding="utf-8"), where=path.name) for path in files]
    return {technique.key: technique for technique in found}


def read(text: str, *, where: str) -> Technique:
    """A technique from TOML text. Raises TechniqueNotUsable, whose sentence starts with `where`."""
    try:
        technique = decode(Technique, tomllib.loads(text))
    except tomllib.TOMLDecodeError as wrong:
        raise TechniqueNotUsable(where=where, reason=f"not TOML: {wrong}") from None
    except NotUnderstood as wrong:
        pointer, sentence = wrong.problems[0]
        raise TechniqueNotUsable(where=where, reason=f"{'.'.join(map(str, pointer))}: {sentence}", at=pointer) from None
    refuse_unusable(technique, where=where)
    return technique


def refuse_unusable(technique: Technique, *, where: str) -> None:
    """Raises TechniqueNotUsable for a technique that contradicts itself; `pointer` says where."""
    phases = technique.phases
    if not phases:
        raise TechniqueNotUsable(where=where, reason="it has no phases.", at=("phases",))
    for number, phase in enumerate(phases):
        reason = _why_unusable(phase, phases[:number])
        if reason:
            raise TechniqueNotUsable(where=f"{where}, phase '{phase.key}'", reason=reason, at=("phases", number))
    for setting in Setting:
        for phase, reason in _out_of_order([phase for phase in phases if setting in phase.settings]):
            at = ("phases", phases.index(phase))
            raise TechniqueNotUsable(where=f"{where}, setting '{setting}', phase '{phase.key}'", reason=reason, at=at)
    if technique.recapitulate_size not in sizes():
        reason = f"{technique.recapitulate_size} is no ISO size."
        raise TechniqueNotUsable(where=where, reason=reason, at=("recapitulate_size",))
    if technique.series_above_glide_path < 1 or technique.series_sizes_up < 0:
        reason = "the series starts above the glide path and goes up, not down."
        raise TechniqueNotUsable(where=where, reason=reason, at=("series_above_glide_path",))


def _out_of_order(phases: Sequence[Phase]) -> Iterator[tuple[Phase, str]]:
    """Phases of one setting that do not follow from those before them, each with the reason."""
    kinds = [phase.kind for phase in phases]
    for number, phase in enumerate(phases):
        before = kinds[:number]
        if phase.kind in (PhaseKind.DESCEND, PhaseKind.ASCEND) and phase.kind in before:
            yield phase, f"there is an earlier phase of kind '{phase.kind}'."
        if phase.kind is PhaseKind.DESCEND and PhaseKind.ASCEND not in kinds[number:]:
            yield phase, "a descending phase needs an ascending one after it."
        if phase.kind is PhaseKind.ASCEND and PhaseKind.DESCEND not in before:
            yield phase, "an ascending phase needs a descending one before it."
        if phase.repeat_from is not None and phase.repeat_from not in [p.key for p in phases[:number]]:
            yield phase, f"it repeats from '{phase.repeat_from}', which is no earlier phase of this setting."


def _why_unusable(phase: Phase, earlier: tuple[Phase, ...]) -> str:
    lacking = [name for name in NEEDS.get(phase.kind, ()) if getattr(phase, name) is None]
    if lacking:
        return f"a phase of kind '{phase.kind}' must state {' and '.join(lacking)}."
    if any(phase.key == other.key for other in earlier):
        return "the key is taken by an earlier phase."
    if not phase.settings:
        return "it is for no setting."
    numbers = (phase.most_passes, phase.expected_passes, phase.steps)
    if any(n is not None and n < 1 for n in numbers) or (phase.step_mm is not None and phase.step_mm <= 0):
        return "passes, steps and their size must be above 0."
    if (phase.expected_passes or 0) > (phase.most_passes or 0):
        return "more passes are expected than allowed."
    if any(size is not None and size not in sizes() for size in (phase.from_size, phase.to_size)):
        return "from_size and to_size must be ISO sizes."
    if phase.to_size is not None and (phase.from_size or 0) > phase.to_size:
        return "from_size lies above to_size."
    return ""
