"""The plans that were computed last, so that the same question is not computed twice: a preview, then its version."""

from __future__ import annotations

from collections import OrderedDict
from threading import Lock

from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.encoding import canonical_text, digest
from planning.whole_tooth.plan import plan

# A plan takes about 1.5 MB; a process keeps those of a dozen phones that choose at the same time.
MOST = 16

kept: OrderedDict[str, Plan] = OrderedDict()
_turn = Lock()


def planned(plan_input: PlanInput) -> Plan:
    """The plan of this input. It follows from the input alone, and the input says all of it: samples, seed, figures.

    Raises what the planner refuses; a refusal is not remembered.
    """
    key = digest(canonical_text(plan_input))
    with _turn:
        if known := kept.get(key):
            kept.move_to_end(key)
            return known
    # Outside the lock, as computing takes long and others must not wait for it.
    made = plan(plan_input)
    with _turn:
        kept[key] = made
        while len(kept) > MOST:
            kept.popitem(last=False)
    return made
