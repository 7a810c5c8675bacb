"""How much one request may ask for. No real tooth comes near these; a request made to wear the server out does."""

from __future__ import annotations

from planning.errors import TooMuchWork
from planning.plan_input import PlanInput

MOST_CANALS = 8  # more than any tooth has
MOST_INSTRUMENTS = 120  # a well-filled kit has a third of it
MOST_READINGS = 60  # of one canal: each taken again a dozen times
MOST_NEEDLES = 20
MOST_PHASES = 40
MOST_PASSES = 10  # of one phase: also of steps
MOST_THRESHOLDS = 100  # about as many as there are figures to replace


def refuse_too_much(given: PlanInput) -> None:
    """Raises TooMuchWork, its path at what there is too much of."""
    counted: tuple[tuple[str, int, int, tuple[str | int, ...]], ...] = (
        ("canals", len(given.canals), MOST_CANALS, ("canals",)),
        ("roots", len(given.roots), MOST_CANALS, ("roots",)),
        ("choices of canals", len(given.choices.canals), MOST_CANALS, ("choices", "canals")),
        ("instruments", len(given.kit.instruments), MOST_INSTRUMENTS, ("kit", "instruments")),
        ("needles", len(given.kit.needles), MOST_NEEDLES, ("kit", "needles")),
        ("irrigants", len(given.choices.final_rinse), MOST_PASSES, ("choices", "final_rinse")),
        ("phases", len(given.technique.phases), MOST_PHASES, ("technique", "phases")),
        ("thresholds", len(given.thresholds), MOST_THRESHOLDS, ("thresholds",)),
        *(
            ("readings", len(canal.readings), MOST_READINGS, ("canals", number, "readings"))
            for number, canal in enumerate(given.canals)
        ),
        *(
            (name, getattr(phase, field) or 0, MOST_PASSES, ("technique", "phases", number, field))
            for number, phase in enumerate(given.technique.phases)
            for name, field in (("passes", "most_passes"), ("steps", "steps"))
        ),
    )
    for what, count, most, at in counted:
        if count > most:
            raise TooMuchWork(reason=f"{count} {what} are more than the {most} that one request may have.", at=at)
