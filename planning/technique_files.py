"""Techniques from text: those provided in `data/techniques`, and a programme's own."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache

from planning.encoding import decode
from planning.errors import NotUnderstood, TechniqueNotUsable
from planning.instruments import sizes
from planning.tables import DATA
from planning.techniques import Phase, PhaseKind, Technique

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
    kinds = [phase.kind for phase in phases]
    if PhaseKind.ASCEND in kinds and PhaseKind.DESCEND not in kinds[: kinds.index(PhaseKind.ASCEND)]:
        raise TechniqueNotUsable(
            where=where, reason="an ascending phase needs a descending one before it.", at=("phases",)
        )
    if technique.recapitulate_size not in sizes():
        reason = f"{technique.recapitulate_size} is no ISO size."
        raise TechniqueNotUsable(where=where, reason=reason, at=("recapitulate_size",))


def _why_unusable(phase: Phase, earlier: tuple[Phase, ...]) -> str:
    lacking = [name for name in NEEDS.get(phase.kind, ()) if getattr(phase, name) is None]
    if lacking:
        return f"a phase of kind '{phase.kind}' must state {' and '.join(lacking)}."
    if any(phase.key == other.key for other in earlier):
        return "the key is taken by an earlier phase."
    if not phase.settings:
        return "it is for no setting."
    if phase.repeat_from is not None and phase.repeat_from not in {other.key for other in earlier}:
        return f"it repeats from '{phase.repeat_from}', which is no earlier phase."
    numbers = (phase.most_passes, phase.expected_passes, phase.steps)
    if any(n is not None and n < 1 for n in numbers) or (phase.step_mm is not None and phase.step_mm <= 0):
        return "passes, steps and their size must be above 0."
    if (phase.expected_passes or 0) > (phase.most_passes or 0):
        return "more passes are expected than allowed."
    if any(size is not None and size not in sizes() for size in (phase.from_size, phase.to_size)):
        return "from_size and to_size must be ISO sizes."
    return ""
