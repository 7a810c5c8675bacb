"""Works a canal of the demonstration as its plan expects it, by the same service that phones report to."""

from __future__ import annotations

from uuid import UUID

from django.utils import timezone

from cases.domain.events.payloads import EventPayload, SignOffPayload, StepPayload
from cases.domain.uuid7 import uuid7
from cases.mapping.plans import plan_of
from cases.models import Person, ToothPlanVersion
from cases.services.treatment import treatment
from cases.services.treatment.treatment import ReceivedEvent
from planning.contract.expected import ExpectedStep
from planning.contract.plan_value import CanalPlan
from planning.foundation.quantities import HALF_MM_UM, stop_um, um
from planning.run_sheet.graph import Action, Exit, Step
from planning.run_sheet.walk import Walk, expected_exit


class Bench:
    """A student's and a supervisor's device at one case."""

    def __init__(self, student: Person, supervisor: Person, version: ToothPlanVersion) -> None:
        self.version = version
        self.devices: dict[Person, tuple[UUID, int]] = {student: (uuid7(), 0), supervisor: (uuid7(), 0)}
        self.student, self.supervisor = student, supervisor

    def work(self, canal: str, *, until: str | None) -> None:
        """From the first step to the first of phase `until`, or to the end."""
        plan = next(each for each in plan_of(self.version).canals if each.canal == canal)
        walk = Walk(plan.run_sheet)
        steps: list[tuple[str, EventPayload]] = []
        while isinstance(node := walk.node, Step) and node.phase != until:
            if node.action is Action.SIGN_OFF:
                self.tell(self.student, canal, steps)
                self.tell(self.supervisor, canal, [(node.id, SignOffPayload(exit="approved"))])
                steps = []
                walk.leave(Exit.APPROVED)
                continue
            step = _told(plan, node, walk)
            steps.append((node.id, step))
            walk.leave(step.exit, step.depth_um)
        self.tell(self.student, canal, steps)

    def tell(self, who: Person, canal: str, steps: list[tuple[str, EventPayload]]) -> None:
        """Reports what was done on a canal; with no canal, on the tooth."""
        if not steps:
            return
        device, seq = self.devices[who]
        batch = [
            ReceivedEvent(
                id=uuid7(),
                device_seq=seq + number,
                seen_position=0,
                plan_hash=self.version.hash,
                device_time=timezone.now(),
                payload=payload,
                canal=canal,
                node=node,
            )
            for number, (node, payload) in enumerate(steps, start=1)
        ]
        treatment.record(actor=who, case=self.version.case, device=device, batch=batch)
        self.devices[who] = device, seq + len(batch)


def _told(plan: CanalPlan, node: Step, walk: Walk) -> StepPayload:
    """How the step is expected to be left: an instrument that goes to resistance, at half a millimetre."""
    exit_, stop = expected_exit(node), walk.stop_um()
    if exit_ not in (Exit.REACHED, Exit.SHORT) or stop is None:
        return StepPayload(exit=exit_, irrigant=node.irrigant, volume_ml=node.volume_ml)
    expected = _expected(plan, node.id, walk.passes[node.id])
    short = stop - HALF_MM_UM if expected is None else min(stop, stop_um(um(expected.depth_mm)))
    depth = stop if exit_ is Exit.REACHED else short
    return StepPayload(exit=Exit.REACHED if depth >= stop else Exit.SHORT, depth_um=depth, stop_um=stop)


def _expected(plan: CanalPlan, node: str, pass_number: int) -> ExpectedStep | None:
    steps = plan.expectation.steps if plan.expectation else ()
    return next((each for each in steps if (each.node, each.pass_number) == (node, pass_number)), None)
