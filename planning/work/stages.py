"""How often a supervisor and an image are asked for: canals that come to a point together are asked for together."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from planning.canal.joins import shares_with
from planning.contract.plan_input import CanalInput, PlanInput
from planning.contract.plan_value import AskedFor, Exposure, Stage
from planning.foundation.tables import Figures
from planning.run_sheet.graph import Action, Step
from planning.techniques.rules import cuts
from planning.techniques.technique import Phase, PhaseKind
from planning.work.withholding import shapes

ONE_END = (PhaseKind.CONE, PhaseKind.FILL)
"""Kinds of phases in which canals that share part of their way are looked at as one."""
SIDES = ("M", "D")
"""First letters of canals that lie mesially and distally of the others."""
Walked = Mapping[str, Sequence[Step]]
"""Steps of the expected path by canal."""


@dataclass(frozen=True, slots=True)
class _Asks:
    """What one canal asks for in one phase."""

    hold_point: str = ""
    image: bool = False


def asked_for(
    plan_input: PlanInput, walked: Walked, joining: Sequence[str], every: Sequence[Phase], figures: Figures
) -> AskedFor:
    """The sign-offs and exposures of all the expected work. `joining` are the canals that wait for their main canal.

    Sign-offs: one on the plan, and one for each group of canals that come to a hold point together, or for each canal
    where the programme asks for that. Exposures: one for a group, and others from another angle where canals lie one
    behind the other.
    """
    each = {name: _by_phase(way) for name, way in walked.items()}
    stages = [
        _stage(plan_input, phase, group, each, figures)
        for number, phase in enumerate(every)
        for group in _groups([name for name in each if phase.key in each[name]], joining, _apart(number, every))
    ]
    return AskedFor(
        stages=tuple(stages),
        exposures=sum(len(stage.exposures) for stage in stages),
        sign_offs=1 + sum(stage.sign_offs for stage in stages),
    )


def _by_phase(path: Sequence[Step]) -> dict[str, _Asks]:
    asks: dict[str, _Asks] = {}
    for node in path:
        if node.action in (Action.IMAGE, Action.SIGN_OFF):
            before = asks.get(node.phase, _Asks())
            image = before.image or node.action is Action.IMAGE
            asks[node.phase] = _Asks(node.hold_point or before.hold_point, image)
    return asks


def _apart(number: int, every: Sequence[Phase]) -> bool:
    """Whether the phase lies between the first that shapes and the last that cuts: there a joining canal comes later
    than its main one."""
    shaping = [n for n, phase in enumerate(every) if shapes(phase)]
    cutting = [n for n, phase in enumerate(every) if cuts(phase)]
    return bool(shaping and cutting) and shaping[0] < number <= cutting[-1]


def _groups(names: Sequence[str], joining: Sequence[str], apart: bool) -> Iterator[list[str]]:
    later = [name for name in names if apart and name in joining]
    for group in ([name for name in names if name not in later], later):
        if group:
            yield group


def _stage(
    plan_input: PlanInput, phase: Phase, group: Sequence[str], each: Mapping[str, Mapping[str, _Asks]], figures: Figures
) -> Stage:
    asks = [each[name][phase.key] for name in group]
    hold_point = next((ask.hold_point for ask in asks if ask.hold_point), "")
    alone = figures["sign_offs.each_canal"] >= 1
    sign_offs = sum(bool(ask.hold_point) for ask in asks) if alone else int(bool(hold_point))
    shown = [canal for canal in plan_input.canals if canal.name in group and each[canal.name][phase.key].image]
    return Stage(
        phase=phase.key,
        title=phase.title,
        hold_point=hold_point,
        canals=tuple(group),
        exposures=tuple(_exposures(plan_input, shown, phase.kind in ONE_END, figures)),
        sign_offs=sign_offs,
    )


def _exposures(
    plan_input: PlanInput, shown: Sequence[CanalInput], one_end: bool, figures: Figures
) -> Iterator[Exposure]:
    first: list[CanalInput] = []
    for canal in shown:
        # A canal that lies behind one on this image is shown by the others, taken from another angle.
        if not any(_superimposed(plan_input, canal, other, one_end) for other in first):
            first.append(canal)
    walked_before = tuple(canal.name for canal in shown if canal not in first)
    if first:
        yield Exposure(canals=tuple(canal.name for canal in first), turned=False)
    for _ in range(figures.count("exposures.angles") - 1 if walked_before else 0):
        yield Exposure(canals=walked_before, turned=True)


def _superimposed(plan_input: PlanInput, canal: CanalInput, other: CanalInput, one_end: bool) -> bool:
    """Whether one exposure cannot show both canals apart: they lie in one root, or in roots on the same side.

    Cones of canals that share part of their way need not be apart: they are meant to be seen together.
    """
    if one_end and other.name in shares_with(plan_input, canal):
        return False
    return canal.root == other.root or _side(canal) == _side(other)


def _side(canal: CanalInput) -> str:
    return canal.name[:1] if canal.name[:1] in SIDES else ""
