"""How often each instrument was used. Each canal that it enters is one use; after a discard a new one is at hand."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass

from cases.domain.events.event import CourseEvent
from cases.domain.events.payloads import InspectedPayload


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """An instrument entered a canal for the first time, or was discarded."""

    event: str
    instrument: str
    """Its key in the kit."""
    canal: str
    discarded: bool = False


def uses(
    events: Iterable[CourseEvent], undone: Collection[str], instrument_of: Callable[[CourseEvent], str | None]
) -> list[Use]:
    """Entries and discards in order. `instrument_of` names the instrument of a step or an inspection.

    What was taken back does not count; what is out of course does: the instrument was in the canal.
    """
    # How many of a key were discarded tells which one is in the hand: the key itself stays the same.
    taken: Counter[str] = Counter()
    entered: set[tuple[str, int, str]] = set()
    uses: list[Use] = []
    for event in events:
        key = instrument_of(event) if event.id not in undone else None
        if key is None:
            continue
        if isinstance(event.payload, InspectedPayload):
            if event.payload.found == "discarded":
                taken[key] += 1
                uses.append(Use(event=event.id, instrument=key, canal=event.canal, discarded=True))
        elif (key, taken[key], event.canal) not in entered:
            entered.add((key, taken[key], event.canal))
            uses.append(Use(event=event.id, instrument=key, canal=event.canal))
    return uses
