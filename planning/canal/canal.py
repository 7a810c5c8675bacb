"""One canal of a tooth with all that has been worked out about it before its order of work is written."""

from __future__ import annotations

from dataclasses import dataclass

from planning import anatomy
from planning.anatomy import Notation, Tooth, ToothName
from planning.canal import apical_size, final_size, prepared_shape
from planning.canal.apical_size import SizeRequest
from planning.canal.initial_shape import Widths, initial_shape_of, widths_of
from planning.canal.joins import Join, join_of
from planning.canal.kit_sizes import kit_sizes
from planning.canal.setting_phases import phases_of
from planning.contract.expected import InitialShape
from planning.contract.plan_input import WIDE_CANAL, CanalInput, PlanInput
from planning.contract.plan_value import Caution, SizeRange
from planning.foundation.errors import ChoiceNotPossible, PlanningError, UnknownTooth
from planning.foundation.quantities import mm
from planning.foundation.tables import Figures
from planning.instruments.iso_3630 import sizes
from planning.lengths.readings import Length
from planning.lengths.working_length import LengthContext, apex_beyond_mm, settle
from planning.tray.selection import Selection


@dataclass(frozen=True, slots=True, kw_only=True)
class Canal:
    """One canal, with all that is known of it before its order of work is written."""

    plan_input: PlanInput
    number: int
    length: Length
    join: Join | None
    size_asked: SizeRequest
    """What decides the final size."""
    size_range: SizeRange
    final_size: int | None
    """None for a wide canal while nobody has chosen one."""
    lacks: tuple[str, ...] = ()
    """Instruments that the final size needs and the kit has not."""
    kit_makes: tuple[int, ...] = ()
    """Sizes of the range for which the kit has everything."""
    crown_mm: float
    widths: Widths | None
    """Of the canal before anything has been in it; None where they are not known."""
    held: tuple[Caution, ...] = ()
    """The cautions that keep steps of this canal closed."""
    unfinished: tuple[str, ...] = ()
    """Canals that share part of its way and cannot be filled, as things stand."""

    @property
    def input(self) -> CanalInput:
        return self.plan_input.canals[self.number]

    @property
    def worked_size(self) -> int | None:
        """The final size, None where the kit cannot make it: no step is written for a size that cannot be made."""
        return None if self.lacks else self.final_size

    @property
    def orifice_mm(self) -> float:
        """From the reference point to the orifice: measured, else at the crown's mean length."""
        return prepared_shape.orifice_mm(self.input, self.plan_input.setting, self.crown_mm)

    @property
    def end_mm(self) -> float | None:
        """Deepest stop of a shaping instrument; None before there is a length."""
        end_um = final_size.end_um(self.length, self.join)
        return None if end_um is None else mm(end_um)

    @property
    def initial_shape(self) -> InitialShape | None:
        """The canal before anything has been in it; None without a length or without known widths."""
        if self.widths is None or self.length.working_length_mm is None:
            return None
        return initial_shape_of(self.widths, self.orifice_mm, self.length.working_length_mm)


def tooth_of(plan_input: PlanInput) -> Tooth:
    """The tooth with its published anatomy. Raises UnknownTooth."""
    try:
        return anatomy.find(ToothName(notation=Notation.ISO_3950, designation=plan_input.tooth))
    # The path of a refusal leads from the plan's input on, whatever part of it was looked at.
    except UnknownTooth as refusal:
        refusal.pointer = ("tooth",)
        raise


def describe(plan_input: PlanInput, number: int, tooth: Tooth, selected: Selection, figures: Figures) -> Canal:
    """Canal `number` with all that is known of it. Raises what its readings, widths and choices are refused for."""
    canal = plan_input.canals[number]
    about = _about(plan_input, canal)
    length = _length(number, canal, about, figures)
    join = join_of(plan_input, number, length)
    beyond_mm = apex_beyond_mm(length, canal.readings, about, figures)
    widths = widths_of(plan_input, number, figures, beyond_mm=beyond_mm)
    charted = final_size.Charted(
        plan_input=plan_input, number=number, tooth=tooth, length=length, join=join, widths=widths
    )
    asked = final_size.asked(charted, selected.series_taper, figures)
    kit = kit_sizes(selected, phases_of(plan_input), figures)
    # The kit comes last: what it can make moves the proposal, and never the range.
    advised = kit.proposed(apical_size.advise(asked, figures))
    size = _final_size(plan_input, number, advised)
    return Canal(
        plan_input=plan_input,
        number=number,
        length=length,
        join=join,
        size_asked=asked,
        size_range=advised,
        final_size=size,
        lacks=() if size is None else kit.lacks[size],
        kit_makes=kit.within(advised),
        crown_mm=tooth.crown_mm or 0.0,
        widths=widths,
    )


def _about(plan_input: PlanInput, canal: CanalInput) -> LengthContext:
    return LengthContext(
        canal=canal.name,
        reference_point=canal.reference_point,
        setting=plan_input.setting,
        resorption=canal.resorption,
        apex_mm=canal.apex_mm,
    )


def _length(number: int, canal: CanalInput, about: LengthContext, figures: Figures) -> Length:
    try:
        return settle(canal.readings, about, figures)
    except PlanningError as refusal:
        raise refusal.below("canals", number, "readings") from None


def _final_size(plan_input: PlanInput, number: int, advised: SizeRange) -> int | None:
    """The final size: as a supervisor chose it for a wide canal, else as the student did, else as it is proposed.
    Raises ChoiceNotPossible.
    """
    name = plan_input.canals[number].name
    chosen = next(((n, c.final_size) for n, c in enumerate(plan_input.choices.canals) if c.canal == name), (0, None))
    let = ((n, o.final_size) for n, o in enumerate(plan_input.overrides) if (o.code, o.canal) == (WIDE_CANAL, name))
    decided = next(let, (0, None))
    _refuse_no_size(name, chosen[1], ("choices", "canals", chosen[0], "final_size"))
    _refuse_no_size(name, decided[1], ("overrides", decided[0], "final_size"))
    if advised.proposed is None and decided[1] is not None:
        return decided[1]
    return chosen[1] or advised.proposed


def _refuse_no_size(canal: str, size: int | None, at: tuple[str | int, ...]) -> None:
    """Raises ChoiceNotPossible."""
    if size is not None and size not in sizes():
        reason = f"{size} is no ISO size. Choose one from {sizes()[0]:02d} to {sizes()[-1]}."
        raise ChoiceNotPossible(canal=canal, reason=reason, at=at)
