"""One canal of a tooth with all that has been worked out about it before its order of work is written."""

from __future__ import annotations

from dataclasses import dataclass

from planning import shaped
from planning.apical_size import Asked
from planning.expected import NaturalCanal
from planning.joins import Join
from planning.natural import Widths, natural_canal
from planning.plan_input import CanalInput, PlanInput
from planning.plan_value import Caution, SizeRange
from planning.readings import Length


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
    held: tuple[Caution, ...]
    """The cautions that keep steps of this canal closed."""
    widths: Widths | None
    """Of the canal before anything has been in it; None where they are not known."""

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
