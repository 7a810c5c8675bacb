"""The plans that were computed last, so that the same question is not computed twice: a preview, then its version."""

from __future__ import annotations

import gzip
import json
from functools import cached_property

from cases.mapping.recent import Recent
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan
from planning.foundation.encoding import canonical_text, digest, encode
from planning.whole_tooth.plan import plan

# As compression on the way has it; the last few per cent would take three times as long.
LEVEL = 6


class PlanAtHand:
    """A plan, and its text for whoever asks for it."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan

    @cached_property
    def packed(self) -> bytes:
        """The plan as JSON, in gzip (RFC 1952)."""
        text = json.dumps(encode(self.plan), separators=(",", ":"), ensure_ascii=False, allow_nan=False)
        return gzip.compress(text.encode(), LEVEL, mtime=0)


# A plan takes about 1.5 MB; a process keeps those of a dozen phones that choose at the same time.
kept: Recent[str, PlanAtHand] = Recent(16)


def planned(plan_input: PlanInput) -> PlanAtHand:
    """The plan of this input. It follows from the input alone, and the input says all of it: samples, seed, figures.

    Raises what the planner refuses; a refusal is not remembered.
    """
    return kept.of(digest(canonical_text(plan_input)), lambda: PlanAtHand(plan(plan_input)))
