"""The emergencies of a tooth: what each is said to be by now, which ones still halt the work, and who goes there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from cases.domain.events.payloads import CorrectedPayload, EmergencyPayload, ResumePayload

SALINE_AFTER = frozenset(
    {"perforation_suspected", "hypochlorite_accident", "sudden_bleeding", "sudden_pain_or_swelling"}
)
"""Emergencies after which nothing but saline goes into any canal: the irrigant may have left the root."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Emergency:
    """One emergency. It is never taken back, only corrected: it was something else, or it was not so."""

    id: str
    what: str
    """As last said; empty where it was not so."""
    corrected_by: str = ""
    """Id of the last event that corrected it; empty where none did."""
    coming_by: str = ""
    """The event by which a supervisor said that they go there."""


@dataclass(slots=True)
class Emergencies:
    """All emergencies of a tooth. Only a supervisor ends a halt, and only for those that the supervisor had seen."""

    by_id: dict[str, Emergency] = field(default_factory=dict)
    halting: dict[str, str] = field(default_factory=dict)
    """The events that halt the tooth, each with the id of its emergency: the event that told it, and each correction
    that made it something else."""
    saline_by: str | None = None
    """The emergency since which every canal is irrigated with saline alone."""
    _before: dict[str, frozenset[str]] = field(default_factory=dict)
    """By emergency, the teller's earlier events that had not been sent yet: the halt does not stop them."""

    @property
    def halted_by(self) -> str | None:
        return next(iter(self.halting.values()), None)

    @property
    def open(self) -> tuple[Emergency, ...]:
        """Those that halt the tooth, in the order they were told."""
        return tuple(emergency for emergency in self.by_id.values() if emergency.id in self.halting.values())

    def halts(self, event: str) -> bool:
        """Whether a halt stops what this event tells. It does not stop what was done before the emergency."""
        return any(event not in self._before.get(by, ()) for by in self.halting.values())

    def tell(self, event: str, payload: EmergencyPayload) -> None:
        """Adds an emergency, which halts the tooth."""
        self.by_id[event] = Emergency(id=event, what=payload.what)
        self.halting[event] = event
        self._before[event] = frozenset(payload.before)
        self._keep_to_saline(event, payload.what)

    def correct(self, event: str, payload: CorrectedPayload) -> bool:
        """Corrects an emergency; False where none has that id. What it was instead halts the tooth like a new one. That
        it was not so ends no halt: only a supervisor does."""
        emergency = self.by_id.get(payload.corrects)
        if emergency is None:
            return False
        what = payload.what or ""
        self.by_id[emergency.id] = replace(emergency, what=what, corrected_by=event)
        if what:
            self.halting[event] = emergency.id
            self._keep_to_saline(emergency.id, what)
        return True

    def come(self, event: str) -> None:
        """A supervisor goes to all that halts the tooth now."""
        for emergency in self.open:
            self.by_id[emergency.id] = replace(emergency, coming_by=event)

    def resume(self, payload: ResumePayload) -> bool:
        """Ends the halts that the supervisor had seen, and the rule of saline alone unless they keep it. False where
        nothing ended."""
        seen = set(payload.ends or self.halting)
        ended = seen & self.halting.keys()
        for event in ended:
            del self.halting[event]
        lifts = self.saline_by is not None and not payload.keep_saline
        if lifts:
            # Another one that still halts the tooth may ask for saline too.
            self.saline_by = next((emergency.id for emergency in self.open if emergency.what in SALINE_AFTER), None)
        return bool(ended) or lifts

    def _keep_to_saline(self, emergency: str, what: str) -> None:
        if what in SALINE_AFTER:
            self.saline_by = self.saline_by or emergency


def fresh(emergencies: Emergencies, events: Iterable[str]) -> tuple[Emergency, ...]:
    """The emergencies that one of these events told or corrected."""
    new = set(events)
    return tuple(
        emergency for emergency in emergencies.by_id.values() if emergency.id in new or emergency.corrected_by in new
    )
