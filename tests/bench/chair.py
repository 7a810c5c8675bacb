"""What the benchmarks of the chair work on: an approved molar in a database of its own, and copies of its case."""

from __future__ import annotations

from datetime import UTC, datetime

from cases.domain.access.roles import Role
from cases.domain.events.payloads import EventPayload, NotePayload, StepPayload
from cases.domain.plans.lifecycle import Decision
from cases.domain.uuid7 import uuid7
from cases.models import ToothPlanVersion
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from cases.services.treatment.treatment import ReceivedEvent
from planning.contract.plan_input import Choices
from planning.run_sheet.graph import Exit
from tests import factories
from tests.cast import chart, decide, open_case
from tests.planning.given import OPEN_30


class Chair:
    """A student, a supervisor and the check molar, approved."""

    def __init__(self) -> None:
        plans.SAMPLES = 10
        self.programme = factories.ProgrammeFactory.create()
        self.student = factories.member(self.programme, "priya", Role.STUDENT)
        self.supervisor = factories.member(self.programme, "vale", Role.SUPERVISOR)
        case = open_case(self.programme, self.student)
        chart(case, self.student)
        case.refresh_from_db()
        kit = factories.kit_row(self.programme)
        asked = Asked(kit_id=kit.pk, technique="crown-down", choices=Choices(needle=OPEN_30))
        version, _ = plans.propose(actor=self.student, case=case, asked=asked)
        plans.submit(actor=self.student, version=version)
        decide(self.supervisor, version, Decision.APPROVED)
        self.version: ToothPlanVersion = ToothPlanVersion.objects.select_related("case").get(pk=version.pk)

    def batch(self, count: int, first_seq: int = 1) -> list[ReceivedEvent]:
        """Exploring the palatal canal over and over: the first step fits, the rest is kept out of course."""
        return self._told(StepPayload(exit=Exit.REACHED, depth_um=21_500, stop_um=21_500), count, first_seq)

    def quiet(self, count: int, first_seq: int) -> list[ReceivedEvent]:
        """What is said between steps."""
        return self._told(NotePayload(text="Seen under the microscope."), count, first_seq)

    def _told(self, payload: EventPayload, count: int, first_seq: int) -> list[ReceivedEvent]:
        return [
            ReceivedEvent(
                id=uuid7(),
                device_seq=first_seq + n,
                seen_position=0,
                plan_hash=self.version.hash,
                device_time=datetime(2026, 3, 5, 12, tzinfo=UTC),
                payload=payload,
                canal="P",
                node="explore/10-02",
            )
            for n in range(count)
        ]
