"""The emergencies of a tooth: what each is said to be by now, which ones still halt the work, and who goes there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from cases.domain.events.payloads import CorrectedPayload, EmergencyPayload, ResumePayload

SALINE_AFTER = frozenset(
    {"perforation_suspected", "hypochlorite_accident", "sudden_bleeding", "sudden_pain_or_swelling"}
)
"""Emergencies after which nothing but saline goes into any canal: what was given may have left the root."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Emergency:
    """One emergency. It is never taken back: what it was said to be can be put right, or that it was not so."""

    id: str
    what: str
    """As last said; empty where it was not so."""
    corrected_by: str = ""
    """The event that said so last."""
    coming_by: str = ""
    """The event by which a supervisor said that they go there."""


@dataclass(slots=True)
class Emergencies:
    """All of a tooth. Only a supervisor ends a halt, and only of what the supervisor had seen."""

    told: dict[str, Emergency] = field(default_factory=dict)
    halting: dict[str, str] = field(default_factory=dict)
    """The emergency by each event that halts the tooth: by telling it, or by saying that it was something else."""
    saline_by: str | None = None
    """The emergency since which every canal is irrigated with saline alone."""
    _before: dict[str, frozenset[str]] = field(default_factory=dict)
    """What the teller had done before an emergency and was still on its way: the halt does not stop it."""

    @property
    def halted_by(self) -> str | None:
        return next(iter(self.halting.values()), None)

    @property
    def open(self) -> tuple[Emergency, ...]:
        """Those that halt the tooth, in the order they were told."""
        return tuple(emergency for emergency in self.told.values() if emergency.id in self.halting.values())

    def halts(self, event: str) -> bool:
        """Whether what this event tells was done in spite of an emergency."""
        return any(event not in self._before.get(by, ()) for by in self.halting.values())

    def tell(self, event: str, payload: EmergencyPayload) -> None:
        """One more; it halts the tooth."""
        self.told[event] = Emergency(id=event, what=payload.what)
        self.halting[event] = event
        self._before[event] = frozenset(payload.before)
        self._keep_to_saline(event, payload.what)

    def correct(self, event: str, payload: CorrectedPayload) -> bool:
        """False where no such emergency was told. What it was instead halts like an emergency of its own; that it was
        not so ends nothing: a supervisor does."""
        emergency = self.told.get(payload.corrects)
        if emergency is None:
            return False
        what = payload.what or ""
        self.told[emergency.id] = replace(emergency, what=what, corrected_by=event)
        if what:
            self.halting[event] = emergency.id
            self._keep_to_saline(emergency.id, what)
        return True

    def come(self, event: str) -> None:
        """A supervisor goes to all that halts the tooth now."""
        for emergency in self.open:
            self.told[emergency.id] = replace(emergency, coming_by=event)

    def resume(self, payload: ResumePayload) -> bool:
        """Ends what the supervisor had seen, and with it saline alone unless that is kept. False where nothing ends."""
        seen = set(payload.ends or self.halting)
        ended = seen & self.halting.keys()
        for event in ended:
            del self.halting[event]
        lifts = self.saline_by is not None and not payload.keep_saline
        if lifts:
            self.saline_by = next((emergency.id for emergency in self.open if emergency.what in SALINE_AFTER), None)
        return bool(ended) or lifts

    def _keep_to_saline(self, emergency: str, what: str) -> None:
        if what in SALINE_AFTER:
            self.saline_by = self.saline_by or emergency


def fresh(emergencies: Emergencies, events: Iterable[str]) -> tuple[Emergency, ...]:
    """Those of which one of these events told something new."""
    new = set(events)
    return tuple(
        emergency for emergency in emergencies.told.values() if emergency.id in new or emergency.corrected_by in new
    )
