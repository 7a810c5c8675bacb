"""One canal of a tooth with all that has been worked out about it before its order of work is written."""

from __future__ import annotations

from dataclasses import dataclass

from planning import apical_size, final_size, shaped, teeth
from planning.apical_size import Asked
from planning.errors import ChoiceNotPossible, PlanningError, UnknownTooth
from planning.expected import NaturalCanal
from planning.instruments import sizes
from planning.joins import Join, join_of
from planning.lengths import About, settle
from planning.natural import Widths, natural_canal, widths_of
from planning.plan_input import CanalChoice, CanalInput, PlanInput
from planning.plan_value import Caution, SizeRange
from planning.readings import Length
from planning.selection import Selection
from planning.tables import Figures
from planning.teeth import Notation, Tooth, ToothName


@dataclass(frozen=True, slots=True, kw_only=True)
class Canal:
    """What the planner knows of it."""

    given: PlanInput
    number: int
    length: Length
    join: Join | None
    size_asked: Asked
    """What the final size hangs on."""
    size_range: SizeRange
    final_size: int
    crown_mm: float
    widths: Widths | None
    """Of the canal before anything has been in it; None where they are not known."""
    held: tuple[Caution, ...] = ()
    """The cautions that keep steps of this canal closed."""
    unfinished: tuple[str, ...] = ()
    """Canals that share its way and cannot come to be filled, as things stand."""

    @property
    def input(self) -> CanalInput:
        return self.given.canals[self.number]

    @property
    def orifice_mm(self) -> float:
        """From the reference point to the orifice: measured, else at the crown's mean length."""
        return shaped.orifice_mm(self.input, self.given.setting, self.crown_mm)

    @property
    def natural(self) -> NaturalCanal | None:
        """The canal before anything has been in it; None without a length or without known widths."""
        if self.widths is None or self.length.working_length_mm is None:
            return None
        return natural_canal(self.widths, self.orifice_mm, self.length.working_length_mm)


def tooth_of(given: PlanInput) -> Tooth:
    """Raises UnknownTooth."""
    try:
        return teeth.find(ToothName(notation=Notation.ISO_3950, designation=given.tooth))
    except UnknownTooth as refusal:
        refusal.pointer = ("tooth",)
        raise


def known(given: PlanInput, number: int, tooth: Tooth, selected: Selection, figures: Figures) -> Canal:
    """Canal `number` with all that is known of it. Raises what its readings, widths and choices are refused for."""
    one = given.canals[number]
    length = _length(given, number, one, figures)
    join = join_of(given, number, length)
    widths = widths_of(given, number, figures)
    charted = final_size.Charted(given=given, number=number, tooth=tooth, length=length, join=join, widths=widths)
    asked = final_size.asked(charted, selected.series_taper, figures)
    advised = apical_size.advise(asked, figures)
    return Canal(
        given=given,
        number=number,
        length=length,
        join=join,
        size_asked=asked,
        size_range=advised,
        final_size=_choice(given, one).final_size or advised.proposed,
        crown_mm=tooth.crown_mm or 0.0,
        widths=widths,
    )


def _length(given: PlanInput, number: int, canal: CanalInput, figures: Figures) -> Length:
    about = About(
        canal=canal.name,
        reference_point=canal.reference_point,
        setting=given.setting,
        resorption=canal.resorption,
        apex_mm=canal.apex_mm,
    )
    try:
        return settle(canal.readings, about, figures)
    except PlanningError as refusal:
        raise refusal.below("canals", number, "readings") from None


def _choice(given: PlanInput, canal: CanalInput) -> CanalChoice:
    for number, choice in enumerate(given.choices.canals):
        if choice.canal == canal.name:
            if choice.final_size is not None and choice.final_size not in sizes():
                at = ("choices", "canals", number, "final_size")
                reason = f"{choice.final_size} is no ISO size. Choose one from {sizes()[0]:02d} to {sizes()[-1]}."
                raise ChoiceNotPossible(canal=canal.name, reason=reason, at=at)
            return choice
    return CanalChoice(canal=canal.name)
