"""How the last depth of a canal lies against what was expected of it: the same on every screen that says so."""

from __future__ import annotations

from dataclasses import dataclass

from planning.contract.expected import Expectation, Judged, against
from planning.foundation.quantities import mm, um
from planning.run_sheet.graph import Action, Step
from planning.run_sheet.walk import Left, Walk


@dataclass(frozen=True, slots=True, kw_only=True)
class Awaited:
    """An insertion that is still to come, and where it is expected."""

    node: str
    pass_number: int
    low_mm: float
    high_mm: float
    limits_mm: tuple[float, float]
    as_if_straight: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Ahead:
    """What is expected of one canal from some point of its work on: by its plan, or by all that was recorded so far."""

    awaited: tuple[Awaited, ...] = ()
    last: Judged | None = None
    """The last depth that was recorded by then."""


def ahead(of: Expectation | None, last: Judged | None = None) -> Ahead:
    return Ahead(
        awaited=tuple(
            Awaited(
                node=step.node,
                pass_number=step.pass_number,
                low_mm=step.low_mm,
                high_mm=step.high_mm,
                limits_mm=step.limits_mm,
                as_if_straight=step.as_if_straight,
            )
            for step in (of.steps if of else ())
            if step.felt is None and step.low_mm is not None and step.high_mm is not None and step.limits_mm is not None
        ),
        last=last,
    )


def last_depth(known: Ahead, walk: Walk) -> Judged | None:
    """The canal's last insertion, held against what was expected; None where nothing was, or no depth was recorded.

    A depth that was recorded after `known` was worked out is compared with what `known` expects: nothing is computed.
    """
    made = next((left for left in reversed(walk.left) if _inserted(walk, left)), None)
    if made is None:
        return None
    last, at = known.last, (made.node, made.pass_number)
    # A step may have been taken back and recorded anew with another depth: what was judged before is not of that.
    if last is not None and (last.node, last.pass_number) == at and made.depth_um in (None, um(last.depth_mm)):
        return last
    expected = next((awaited for awaited in known.awaited if (awaited.node, awaited.pass_number) == at), None)
    if expected is None or made.depth_um is None:
        return None
    depth_mm = mm(made.depth_um)
    return Judged(
        node=made.node,
        pass_number=made.pass_number,
        depth_mm=depth_mm,
        low_mm=expected.low_mm,
        high_mm=expected.high_mm,
        felt=against(depth_mm, expected.limits_mm),
        as_if_straight=expected.as_if_straight,
    )


def _inserted(walk: Walk, left: Left) -> bool:
    node = walk.sheet.nodes[left.node]
    return isinstance(node, Step) and node.action is Action.INSTRUMENT
