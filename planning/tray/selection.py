"""Which instruments of the kit a technique uses, by stated rules: no list of sizes stands in the program."""

from __future__ import annotations

from dataclasses import dataclass, field, replace

from planning.contract.plan_input import PlanInput
from planning.foundation.errors import ChoiceNotPossible, InstrumentNotDescribed, KitLacks, MotionNotAccepted
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import Instrument, Motion, Use, refuse_undescribed, size_above, sizes
from planning.techniques.technique import PhaseKind, Technique

MEANS = ("technique", "kit", "setting", "thresholds")
"""With what a canal is worked, in any tooth; and what was chosen for all canals."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Selection:
    """The kit sorted for one technique. Two are equal where what they were sorted from is the same to the letter."""

    means: str
    """All that it was sorted from and is worked with, written out: 20 and 20.0 are equal numbers, and sentences tell
    them apart."""
    kit: dict[str, Instrument] = field(compare=False)
    """All instruments by key."""
    hand: dict[int, Instrument] = field(compare=False)
    """Hand instruments by size, of the smallest taper the kit has of each."""
    recapitulating: Instrument = field(compare=False)
    glide_path_to: int = field(compare=False)
    coronal: tuple[Instrument, ...] = field(compare=False)
    """Instruments for coronal flaring, the steepest taper first."""
    series: dict[int, Instrument] = field(compare=False)
    """All shaping instruments of the chosen taper, by size."""
    descending: tuple[Instrument, ...] = field(compare=False)
    """The series that is worked down, largest first; empty for a hand technique."""

    @property
    def series_taper(self) -> int:
        """Taper of the final shape."""
        first = next(iter(self.series.values()), None) or self.recapitulating
        return first.taper


def select(plan_input: PlanInput, figures: Figures) -> Selection:
    """The kit's instruments, sorted by what the technique uses them for.

    Raises MotionNotAccepted, InstrumentNotDescribed, KitLacks.
    """
    technique = plan_input.technique
    _refuse_unfit(plan_input, figures)
    instruments = plan_input.kit.instruments
    hand: dict[int, Instrument] = {}
    # The smallest taper of each size comes first, and the first one counts.
    for instrument in sorted((i for i in instruments if i.motion is Motion.HAND), key=lambda i: (i.size, i.taper)):
        hand.setdefault(instrument.size, instrument)
    if technique.recapitulate_size not in hand:
        raise _lacks(technique, f"hand instrument of size {technique.recapitulate_size:02d}")
    engine = any(phase.kind is PhaseKind.DESCEND for phase in technique.phases)
    glide_path_to = _glide_path_to(plan_input)
    series = _series(plan_input) if engine else {}
    return Selection(
        means=_means(plan_input),
        kit={instrument.key: instrument for instrument in instruments},
        hand=hand,
        recapitulating=hand[technique.recapitulate_size],
        glide_path_to=glide_path_to,
        coronal=_coronal(plan_input),
        series=series,
        descending=_descending(technique, series, glide_path_to) if engine else (),
    )


def _means(plan_input: PlanInput) -> str:
    shared = replace(plan_input.choices, canals=())
    return repr([shared, *(getattr(plan_input, name) for name in MEANS)])


def _refuse_unfit(plan_input: PlanInput, figures: Figures) -> None:
    seen: set[str] = set()
    for number, instrument in enumerate(plan_input.kit.instruments):
        at = ("kit", "instruments", number)
        try:
            refuse_undescribed(instrument, figures)
        except InstrumentNotDescribed as refusal:
            raise refusal.below(*at) from None
        if instrument.key in seen:
            raise InstrumentNotDescribed(instrument=instrument.key, reason="it is in the kit twice. Keep one.", at=at)
        seen.add(instrument.key)
        unaccepted = instrument.motion not in plan_input.technique.motions
        # A hand technique leaves engine instruments in the drawer; one of a motion that no phase could use is refused.
        if unaccepted and instrument.use is not Use.HAND and Motion.CONTINUOUS in plan_input.technique.motions:
            raise MotionNotAccepted(
                technique=plan_input.technique.name,
                accepted=" and ".join(plan_input.technique.motions),
                instrument=instrument.name,
                motion=instrument.motion,
                at=(*at, "motion"),
            )


def _glide_path_to(plan_input: PlanInput) -> int:
    chosen, least = plan_input.choices.glide_path_to_size, plan_input.technique.recapitulate_size
    hand_phases = [p for p in plan_input.technique.phases if p.kind is PhaseKind.TO_LENGTH and not p.to_estimate]
    written = next((p.to_size for p in hand_phases if p.to_size is not None), None)
    size = chosen if chosen is not None else written or least
    if size not in sizes() or size < least:
        reason = f"the last glide-path size must be an ISO size from {least:02d} up, not {size}."
        raise ChoiceNotPossible(canal="Glide path", reason=reason, at=("choices", "glide_path_to_size"))
    return size


def _coronal(plan_input: PlanInput) -> tuple[Instrument, ...]:
    if not any(phase.kind is PhaseKind.FLARE for phase in plan_input.technique.phases):
        return ()
    coronal = [i for i in plan_input.kit.instruments if i.use is Use.CORONAL]
    if not coronal:
        raise _lacks(plan_input.technique, "coronal instrument")
    return tuple(sorted(coronal, key=lambda i: (-i.taper, -i.size)))


def _series(plan_input: PlanInput) -> dict[int, Instrument]:
    shaping = [i for i in plan_input.kit.instruments if i.use is Use.SHAPING]
    if not shaping:
        raise _lacks(plan_input.technique, "shaping instrument")
    taper = plan_input.choices.series_taper
    if taper is None:
        # Nobody chose one: the gentlest.
        taper = min(i.taper for i in shaping)
    series = {i.size: i for i in sorted(shaping, key=lambda i: i.size) if i.taper == taper}
    if not series:
        raise _lacks(plan_input.technique, f"shaping instrument of taper .{taper:02d}", at=("choices", "series_taper"))
    return series


def _descending(technique: Technique, series: dict[int, Instrument], glide_path_to: int) -> tuple[Instrument, ...]:
    """The series that is worked down, largest first: neighbouring ISO sizes of one taper, all above the glide path.
    Raises KitLacks.
    """
    smallest = size_above(glide_path_to, technique.series_above_glide_path)
    wanted = [smallest and size_above(smallest, step) for step in range(technique.series_sizes_up + 1)]
    taper = next(iter(series.values())).taper
    picked = []
    for size in wanted:
        if size is None:
            raise _lacks(technique, f"series above a glide path of size {glide_path_to}")
        if size not in series:
            raise _lacks(technique, f"shaping instrument {size:02d}/.{taper:02d}")
        picked.append(series[size])
    return tuple(reversed(picked))


def hand_of(selection: Selection, size: int, technique: Technique, canal: str) -> Instrument:
    """The hand instrument of a size. Raises KitLacks."""
    if size not in selection.hand:
        raise _lacks(technique, f"hand instrument of size {size:02d}", canal)
    return selection.hand[size]


def shaping_of(selection: Selection, size: int, technique: Technique, canal: str) -> Instrument:
    """The instrument of the series that has a size. Raises KitLacks."""
    if size not in selection.series:
        raise _lacks(technique, f"shaping instrument {size:02d}/.{selection.series_taper:02d}", canal)
    return selection.series[size]


def _lacks(
    technique: Technique, wanted: str, canal: str = "this tooth", at: tuple[str | int, ...] = ("kit", "instruments")
) -> KitLacks:
    return KitLacks(wanted=wanted, technique=technique.name, canal=canal, at=at)
