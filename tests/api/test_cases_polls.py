"""What phones and supervisors ask for again and again: the tag is another one whenever the answer is, whoever changed
something and by which service; with nothing new an answer costs as many queries as are counted here.

The judge is the answer itself, asked for in full after each step.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from cases.domain.access.roles import Role
from cases.domain.events import payloads
from cases.domain.events.payloads import EventPayload
from cases.domain.plans.lifecycle import Decision
from cases.domain.struck import StruckWhy
from cases.models import Case, Membership, Person, ToothPlanVersion
from cases.services.charting import aliases, canals, cases
from cases.services.corrections import struck
from cases.services.planning import plans, revocation
from planning.run_sheet.graph import Exit
from tests.cases.test_treatment import PHONE, TABLET, event, record
from tests.cast import API, canal_of, client, decide

QUERIES = {"worklist": 4, "running": 5, "events": 4}
"""Who asks (two). Lists: what they may, what waits, and for running work what goes on; events: the case, its newest."""


class Polls:
    """Asks for all three as one person does."""

    def __init__(self, person: Person, case: Case) -> None:
        programme = f"{API}/programmes/{case.programme_id}"
        self.browser = client(person)
        self.at = {
            "worklist": f"{programme}/worklist",
            "running": f"{programme}/running-work",
            "events": f"{API}/cases/{case.pk}/events",
        }
        self.last = {name: self.ask(name) for name in self.at}

    def ask(self, name: str) -> tuple[str, Any]:
        """The tag, and the answer without what time alone changes."""
        answer = self.browser.get(self.at[name])
        assert answer.status_code == 200, answer.content
        body = answer.json()
        for row in body.get("results", ()):
            row.pop("waiting_s")
            row.pop("step_s", None)
        return answer["ETag"], body

    def changed_by(self, step: Callable[[], object]) -> set[str]:
        """Which of the answers the step changes; each then has another tag."""
        step()
        changed = set()
        for name, (tag_before, body_before) in list(self.last.items()):
            tag, body = self.last[name] = self.ask(name)
            if body != body_before:
                changed.add(name)
                assert tag != tag_before, name
        return changed


class Story:
    """What Priya, Dr Vale and the administration do to a case that waits for its first approval."""

    def __init__(self, admin: Client, student: Person, supervisor: Person, version: ToothPlanVersion) -> None:
        self.admin, self.student, self.supervisor, self.version = admin, student, supervisor, version
        self.seqs = {PHONE: 0, TABLET: 0}

    @property
    def case(self) -> Case:
        return Case.objects.get(pk=self.version.case_id)

    def alias(self) -> None:
        revision = self.case.revision
        aliases.correct(actor=self.student, case=self.case, seen_revision=revision, alias="Bench 2", is_no_name=True)

    def supervised_by(self, person: Person) -> None:
        case = self.case
        changes = {"supervisor_id": person.pk}
        cases.change_case(actor=self.student, case=case, seen_revision=case.revision, changes=changes)

    def renamed(self, person: Person) -> None:
        """By the administration, which alone can."""
        page = self.admin.get(at := f"/admin/cases/person/{person.pk}/change/")
        body = dict.fromkeys(("is_active",), "on") | {"username": person.username, "display_name": "Renamed"}
        assert page.status_code == 200
        assert self.admin.post(at, body).status_code == 302

    def point(self) -> None:
        canals.change_canal(actor=self.student, canal=canal_of(self.case, "P"), changes={"reference_point": "the rim"})

    def struck(self) -> None:
        reading = canal_of(self.case, "DB").readings.first()
        assert reading is not None
        struck.strike(actor=self.student, reading=reading, why=StruckWhy.WRONG_CANAL)

    def withdrawn(self) -> None:
        plans.withdraw(actor=self.student, version=self._now())

    def submitted(self) -> None:
        plans.submit(actor=self.student, version=self._now())

    def approved(self) -> None:
        decide(self.supervisor, self._now(), Decision.APPROVED)

    def revoked(self) -> None:
        revocation.revoke(
            actor=self.supervisor, version=self._now(), seen_hash=self.version.hash, reason="Another reading."
        )

    def told(self, payload: EventPayload, canal: str = "", node: str = "", *, by_supervisor: bool = False) -> None:
        device, who = (TABLET, self.supervisor) if by_supervisor else (PHONE, self.student)
        self.seqs[device] += 1
        event_ = event(self._now(), self.seqs[device], payload, canal=canal, node=node)
        record(who, self._now(), event_, device=device)

    def _now(self) -> ToothPlanVersion:
        version: ToothPlanVersion = ToothPlanVersion.objects.select_related("case").get(pk=self.version.pk)
        return version


def test_the_tag_moves_with_every_service_that_changes_what_is_seen(
    admin_client: Client, priya: Person, vale: Person, amari: Person, submitted: ToothPlanVersion
) -> None:
    story, polls = Story(admin_client, priya, vale, submitted), Polls(vale, submitted.case)
    supervisor, entry = partial(story.told, by_supervisor=True), "explore/10-02"
    steps: list[tuple[str, Callable[[], object]]] = [
        ("worklist", story.alias),
        ("worklist", partial(story.renamed, priya)),
        ("worklist", partial(story.supervised_by, amari)),
        ("worklist", partial(story.renamed, amari)),
        ("worklist", story.withdrawn),
        ("worklist", story.submitted),
        ("worklist events", story.approved),
        ("running events", partial(story.told, payloads.StepPayload(exit=Exit.REACHED, depth_um=21_500), "P", entry)),
        ("running events", partial(story.told, payloads.NotePayload(text="Seen."), "P")),
        ("running events", partial(supervisor, payloads.TakeOverPayload())),
        ("running events", partial(story.renamed, vale)),
        ("running events", partial(supervisor, payloads.GiveBackPayload())),
        ("running events", partial(story.told, payloads.EmergencyPayload(what="sudden_bleeding"))),
        ("running events", partial(supervisor, payloads.ComePayload())),
        ("running events", partial(supervisor, payloads.ResumePayload(reason="Looked at."))),
        ("running events", story.struck),
        ("running events", story.revoked),
    ]
    assert [(moves, step) for moves, step in steps if polls.changed_by(step) != set(moves.split())] == []


def test_with_nothing_new_an_answer_costs_so_many_queries(vale: Person, approved: ToothPlanVersion) -> None:
    polls = Polls(vale, approved.case)
    for name, at in polls.at.items():
        with CaptureQueriesContext(connection) as asked:
            answer = polls.browser.get(at, headers={"If-None-Match": polls.last[name][0]})
        assert (name, answer.status_code, len(asked)) == (name, 304, QUERIES[name]), [each["sql"] for each in asked]


def test_who_may_see_it_no_more_is_not_told_that_nothing_is_new(vale: Person, approved: ToothPlanVersion) -> None:
    polls = Polls(vale, approved.case)

    def statuses() -> dict[str, int]:
        return {
            name: polls.browser.get(at, headers={"If-None-Match": polls.last[name][0]}).status_code
            for name, at in polls.at.items()
        }

    Membership.objects.filter(person=vale).update(role=Role.STUDENT)
    assert statuses() == {"worklist": 403, "running": 403, "events": 404}
    Membership.objects.filter(person=vale).delete()
    assert statuses() == {"worklist": 404, "running": 404, "events": 404}
