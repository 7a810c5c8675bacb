"""The canals of a tooth, each planned from what it rests on alone, and together where they join.

What was worked out of a canal is remembered, by everything that it was worked out from: where one canal of a tooth has
changed, the others are not planned again. Nothing else can get into it, as a canal is planned from its own view of the
input, in which the other canals are not there but for how they lie to it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, fields, replace
from functools import lru_cache

from planning.anatomy import Tooth
from planning.canal.canal import Canal, describe
from planning.canal.setting_phases import phases_of
from planning.contract.cautions import overridden, withholding
from planning.contract.plan_input import CanalChoice, CanalInput, PlanInput
from planning.contract.plan_value import Caution
from planning.foundation.tables import Figure, Figures
from planning.tray.selection import MEANS, Selection
from planning.whole_tooth import cautions
from planning.whole_tooth.rationales import rationales
from planning.work import joined
from planning.work.canal_plan import PlannedCanal, plan_canal

MOST_KEPT = 64  # canals of 0.2 MB each; as many as the plans have that a process keeps
OF_THE_TOOTH = [f.name for f in fields(PlanInput) if f.name not in (*MEANS, "canals", "choices")]
"""What canals share besides the means that they are worked with."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalView:
    """All that the plan of one canal rests on. Two are equal where that is the same to the letter."""

    text: tuple[str, ...]
    """The view written out: 20 and 20.0 are equal numbers, and sentences tell them apart."""
    number: int
    plan_input: PlanInput = field(compare=False)
    """Without what other canals were found to be."""
    tooth: Tooth = field(compare=False)
    selected: Selection = field(compare=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Described:
    """A canal before it is planned, and what is warned of by then."""

    canal: Canal
    warned: tuple[Caution, ...]
    rows: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Planned:
    """A canal's plan, and what is known to be warned of once it is there."""

    canal: PlannedCanal
    warned: tuple[Caution, ...]
    rows: tuple[Figure, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedCanals:
    """All canals of a tooth in their order, and what is warned of by what they are and by their plans."""

    described: tuple[Canal, ...]
    planned: tuple[PlannedCanal, ...]
    warned: tuple[Caution, ...]


def plan_canals(
    plan_input: PlanInput, tooth: Tooth, shut: tuple[Caution, ...], selected: Selection, figures: Figures
) -> PlannedCanals:
    """Every canal planned; `shut` closes the tooth, and so each of them. Canals that join keep steps of each other
    closed. Raises what `describe` and `plan_canal` refuse."""
    views = list(_views(plan_input, tooth, selected))
    described = [describe_once(view) for view in views]
    canals = [replace(each.canal, held=(*shut, *withholding(each.warned))) for each in described]
    closed, joint = _joined(canals)
    planned = [plan_once(view, canal.held, canal.unfinished) for view, canal in zip(views, closed, strict=True)]
    later = [caution for each in planned for caution in each.warned]
    again: list[_Planned] = []
    if withholding(later):
        # What is known of a canal only once it is planned may keep closed what joins it.
        held = [replace(c, held=(*c.held, *withholding(each.warned))) for c, each in zip(canals, planned, strict=True)]
        reclosed, joint = _joined(held)
        again = [
            # Planned once more only where something holds it that its plan did not know of yet.
            plan_once(view, canal.held, canal.unfinished) if _codes(canal.held) - known else each
            for view, canal, each, known in zip(views, reclosed, planned, map(_known, closed, planned), strict=True)
        ]
    for rows in (*(each.rows for each in described), *(each.rows for each in (*planned, *again))):
        figures.rest_on(rows)
    return PlannedCanals(
        described=tuple(canals),
        planned=tuple(each.canal for each in again or planned),
        warned=(*(caution for each in described for caution in each.warned), *joint, *later),
    )


def _known(canal: Canal, planned: _Planned) -> set[str]:
    """Codes of the cautions that a canal's plan knew of."""
    return _codes((*canal.held, *planned.warned))


def _codes(cautions_: Iterable[Caution]) -> set[str]:
    return {caution.code for caution in cautions_}


def _joined(canals: Sequence[Canal]) -> tuple[list[Canal], list[Caution]]:
    """The canals, each with what keeps its steps closed because of a canal that it joins, and the cautions on that."""
    plan_input = canals[0].plan_input
    every = phases_of(plan_input)
    own = {name: overridden(plan_input, warned) for name, warned in joined.cautions(canals, every).items()}
    closed = [
        replace(
            canal,
            held=(*canal.held, *withholding(own[canal.input.name])),
            unfinished=joined.unfinished(canal, canals, every),
        )
        for canal in canals
    ]
    return closed, [caution for warned in own.values() for caution in warned]


# --- one canal, from its view alone ----------------------------------------------------------------------------------


def _views(plan_input: PlanInput, tooth: Tooth, selected: Selection) -> Iterator[CanalView]:
    choices = plan_input.choices
    beside = tuple(map(_beside, plan_input.canals))
    shared = repr([beside, *(getattr(plan_input, name) for name in OF_THE_TOOTH)])
    for number, own in enumerate(plan_input.canals):
        # Each in its place still: refusals name places, and a canal's place is part of its seed.
        canals = (*beside[:number], own, *beside[number + 1 :])
        chosen = tuple(each if each.canal == own.name else CanalChoice(canal=each.canal) for each in choices.canals)
        yield CanalView(
            text=(selected.means, shared, repr((number, own, chosen))),
            number=number,
            plan_input=replace(plan_input, canals=canals, choices=replace(choices, canals=chosen)),
            tooth=tooth,
            selected=selected,
        )


def _beside(canal: CanalInput) -> CanalInput:
    """What other canals may know of a canal: that it is there, in which root, and whether anybody has seen it."""
    return CanalInput(name=canal.name, root=canal.root, reference_point="", finding=canal.finding)


@lru_cache(maxsize=MOST_KEPT)
def describe_once(view: CanalView) -> _Described:
    figures = Figures(view.plan_input.thresholds)
    canal = describe(view.plan_input, view.number, view.tooth, view.selected, figures)
    warned = overridden(view.plan_input, cautions.canal_cautions(canal, view.tooth, figures))
    return _Described(canal=canal, warned=tuple(warned), rows=figures.used())


@lru_cache(maxsize=MOST_KEPT)
def plan_once(view: CanalView, held: tuple[Caution, ...], unfinished: tuple[str, ...]) -> _Planned:
    """What the canal's plan warns of and that keeps closed is left out of its order of work."""
    figures = Figures(view.plan_input.thresholds)
    canal = replace(describe_once(view).canal, held=held, unfinished=unfinished)
    planned = plan_canal(canal, view.selected, figures)
    warned = overridden(view.plan_input, cautions.work_cautions(canal, planned, figures))
    more = [caution for caution in withholding(warned) if caution not in held]
    # Some are known only from the plan itself, the wall that is left for one: it is made again without what they
    # withhold.
    if more:
        planned = plan_canal(replace(canal, held=(*held, *more)), view.selected, figures)
    reasons = rationales(canal, planned, view.selected, figures)
    planned = replace(planned, plan=replace(planned.plan, rationales=reasons))
    return _Planned(canal=planned, warned=tuple(warned), rows=figures.used())
