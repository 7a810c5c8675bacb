"""Canals of one root that join: which goes to the terminus, and where the other ends."""

from __future__ import annotations

from dataclasses import dataclass

from planning.contract.canal_facts import Finding
from planning.contract.cautions import caution, override_of
from planning.contract.plan_input import CanalInput, Pattern, PlanInput, RootInput
from planning.contract.plan_value import Caution
from planning.foundation.errors import CanalsDoNotFit, ChoiceNotPossible, JunctionBeyondCanal
from planning.foundation.quantities import mm, stop_um, um
from planning.lengths.readings import Length

JOINING = frozenset({Pattern.JOIN, Pattern.DIVIDE_AND_JOIN})
"""Patterns that end in one canal. One that divides again keeps two lengths past the join."""

SHARING = JOINING | {Pattern.JOIN_AND_DIVIDE, Pattern.DIVIDE}
"""Patterns in which canals share part of their way: what fills one of them may close the other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Join:
    """How one canal ends in another."""

    main: str
    junction_um: int | None
    """From the reference point, before rounding; None while it has not been found."""
    caution: Caution | None

    @property
    def end_um(self) -> int | None:
        """The stop at the junction; None while the junction is not known."""
        return None if self.junction_um is None else stop_um(self.junction_um)


def refuse_unfit_roots(plan_input: PlanInput) -> None:
    """Raises CanalsDoNotFit or ChoiceNotPossible for roots that do not match the canals."""
    names = {root.name for root in plan_input.roots}
    if len(names) < len(plan_input.roots):
        raise CanalsDoNotFit(reason="A root is there twice.", at=("roots",))
    for number, root in enumerate(plan_input.roots):
        here = [canal.name for canal in plan_input.canals if canal.root == root.name]
        at = ("roots", number)
        if not here:
            raise CanalsDoNotFit(reason=f"Root {root.name} has no canal in this plan.", at=(*at, "name"))
        if root.main_canal is not None and root.main_canal not in here:
            reason = f"the main canal must be one of {', '.join(here)}."
            raise ChoiceNotPossible(canal=f"Root {root.name}", reason=reason, at=(*at, "main_canal"))
        if root.pattern in JOINING and len(here) > 1 and root.main_canal is None:
            reason = f"{' and '.join(here)} join: choose which goes to the terminus."
            raise ChoiceNotPossible(canal=f"Root {root.name}", reason=reason, at=(*at, "main_canal"))


def root_of(plan_input: PlanInput, canal: CanalInput) -> RootInput | None:
    return next((root for root in plan_input.roots if root.name == canal.root), None)


def shares_with(plan_input: PlanInput, canal: CanalInput) -> tuple[str, ...]:
    """The canals that share part of its way; one that was searched for and not found is none."""
    root = root_of(plan_input, canal)
    if root is None or root.pattern not in SHARING or canal.finding is Finding.SEARCHED_NOT_FOUND:
        return ()
    return tuple(
        other.name
        for other in plan_input.canals
        if other.root == root.name and other.name != canal.name and other.finding is not Finding.SEARCHED_NOT_FOUND
    )


def join_of(plan_input: PlanInput, number: int, length: Length) -> Join | None:
    """How canal `number` joins; None where it runs on its own. Raises JunctionBeyondCanal, or CanalsDoNotFit where it
    would join above its measured orifice."""
    canal = plan_input.canals[number]
    root = root_of(plan_input, canal)
    if root is None or root.pattern not in JOINING or root.main_canal in (None, canal.name):
        return None
    main = root.main_canal or ""
    junction = canal.junction
    if junction is None or length.working_length_mm is None:
        return Join(main=main, junction_um=None, caution=caution("junction-missing", canal=canal.name, main=main))
    # Where the canals meet does not move when a length is taken again: it is told by the length it was measured with.
    then_um = um(junction.at_length_mm if junction.at_length_mm is not None else length.working_length_mm)
    away_um = um(junction.from_terminus_mm)
    if not 0 < away_um < then_um:
        raise JunctionBeyondCanal(
            canal=canal.name,
            from_terminus_mm=junction.from_terminus_mm,
            length_mm=mm(then_um),
            at=("canals", number, "junction", "from_terminus_mm"),
        )
    if canal.orifice_mm is not None and then_um - away_um <= um(canal.orifice_mm):
        reason = (
            f"{canal.name}: a junction {junction.from_terminus_mm} mm from the terminus lies above its orifice, "
            f"{canal.orifice_mm} mm deep. Check both figures."
        )
        raise CanalsDoNotFit(reason=reason, at=("canals", number, "junction", "from_terminus_mm"))
    # By an estimate alone no stop is set: a supervisor has to accept it first.
    if junction.method == "image_estimate":
        guessed = caution("junction-estimated", canal=canal.name, main=main)
        accepted = override_of(plan_input, guessed.code, canal.name) is not None
        return Join(main=main, junction_um=then_um - away_um if accepted else None, caution=guessed)
    # The junction stays where it was measured. That the length has moved since is told, as one of the two may be wrong.
    moved = abs(um(length.working_length_mm) - then_um)
    warn = caution("junction-moved", canal=canal.name, value=mm(moved), unit="mm") if moved else None
    return Join(main=main, junction_um=then_um - away_um, caution=warn)
