"""Why a whole tooth asks for so many sign-offs, images and changes of instrument."""

from __future__ import annotations

from collections.abc import Iterator

from planning.contract.plan_value import AskedFor, Stage
from planning.contract.rationale import Calculation, Rationale
from planning.whole_tooth.rationales.about import rationale
from planning.whole_tooth.rationales.terms import Term, added, comes_to, known


def tooth_rationales(asks: AskedFor) -> Iterator[Rationale]:
    """The rationales of what the plan of a tooth counts over all its canals."""
    rule = "One for the plan itself, and one wherever canals come to a hold point together."
    signed = [known(_named(stage), stage.sign_offs, "") for stage in asks.stages if stage.sign_offs]
    yield rationale("asks.sign_offs", rule, (), (), _counted([Term("1", 1), *signed], asks.sign_offs))
    rule = "One wherever canals come to an image together, others from another angle where they lie one behind another."
    taken = [known(_named(stage), len(stage.exposures), "") for stage in asks.stages if stage.exposures]
    yield rationale("asks.exposures", rule, (), (), *([_counted(taken, asks.exposures)] if taken else []))
    rule = "How often another instrument is taken up, each canal's own order kept."
    yield rationale("tray.changes", f"{rule} Canals that need the same one follow each other where that saves changes.")
    yield rationale("one_at_a_time.changes", f"{rule} One canal is finished before the next.")


def _named(stage: Stage) -> str:
    return f"{stage.title}, {', '.join(stage.canals)}"


def _counted(terms: list[Term], count: int) -> Calculation:
    return comes_to(added(terms), count, "")
