"""What is expected of the work that remains, once part of an order of work has been done.

The order of work is the one that was approved and stays as it is: only what is expected of its steps moves.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from planning.canal.canal import describe, tooth_of
from planning.contract.expected import Expectation, Judged
from planning.contract.plan_input import PlanInput
from planning.foundation.tables import Figures
from planning.run_sheet.graph import Action, Step
from planning.run_sheet.walk import Walk
from planning.tray import selection
from planning.work import canal_work


@dataclass(frozen=True, slots=True, kw_only=True)
class CanalBands:
    """What is expected of one canal from where its work stands."""

    canal: str
    done: int
    """How many of the expectation's steps have been done; the others are still to come."""
    expectation: Expectation
    last: Judged | None
    """The last recorded depth that was expected in a band."""


def bands(plan_input: PlanInput, walks: Mapping[str, Walk]) -> tuple[CanalBands, ...]:
    """The bands of every canal that is worked and whose widths are known.

    `plan_input` is what its order of work was made from.

    The samples are the plan's own: each recorded depth weighs them and takes the place of the simulated one.
    """
    figures = Figures(plan_input.thresholds)
    tooth, selected = tooth_of(plan_input), selection.select(plan_input, figures)
    shown = []
    for number, charted in enumerate(plan_input.canals):
        walk = walks.get(charted.name)
        if walk is None:
            continue
        canal = describe(plan_input, number, tooth, selected, figures)
        # Along the sheet that was approved. A sheet written anew might have other steps than those on the phone.
        way = canal_work.expected(canal, selected, walk.sheet, figures, so_far=walk)
        if way.expectation is not None:
            done = _insertions(walk)
            shown.append(CanalBands(canal=charted.name, done=done, expectation=way.expectation, last=way.last))
    return tuple(shown)


def _insertions(walk: Walk) -> int:
    nodes = (walk.sheet.nodes[left.node] for left in walk.left)
    return sum(isinstance(node, Step) and node.action is Action.INSTRUMENT for node in nodes)
