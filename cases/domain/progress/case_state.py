"""Where the work on a tooth stands."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from cases.domain.progress.canal_progress import CanalProgress
from cases.domain.progress.emergencies import Emergencies
from cases.domain.progress.out_of_course import OutOfCourse
from cases.domain.progress.taken_over import TakenOver
from cases.domain.progress.visit import Prerequisite, Visit
from planning.run_sheet.graph import RunSheet

Sheets = Mapping[str, RunSheet]
"""Run sheets of one plan by canal."""


@dataclass(slots=True)
class CaseState:
    """The whole tooth. Canals without a run sheet are not in it."""

    visit: Visit
    plan: str = ""
    """Hash of the plan in force; empty before there was one."""
    canals: dict[str, CanalProgress] = field(default_factory=dict)
    revoked_by: str | None = None
    """The event by which the approval of the plan in force was withdrawn."""
    emergencies: Emergencies = field(default_factory=Emergencies)
    turned_to: str = ""
    taken_over: TakenOver = field(default_factory=TakenOver)
    out_of_course: dict[str, OutOfCourse] = field(default_factory=dict)
    undone: tuple[str, ...] = ()

    @property
    def halted_by(self) -> str | None:
        """The emergency that stopped the work."""
        return self.emergencies.halted_by

    @property
    def saline_by(self) -> str | None:
        """The emergency since which every canal is irrigated with saline alone."""
        return self.emergencies.saline_by

    @property
    def missing(self) -> tuple[Prerequisite, ...]:
        """What has to be there before any canal is worked."""
        return self.missing_but(halted=self.halted_by is not None)

    def missing_but(self, *, halted: bool) -> tuple[Prerequisite, ...]:
        """The same, where `halted` says whether the work counts as halted."""
        revoked = (Prerequisite.REVOKED,) if self.revoked_by else ()
        return (*self.visit.missing(halted=halted), *revoked)
