"""What the benchmark of webhooks works on: two programmes, one of them with a webhook that nothing is sent to."""

from __future__ import annotations

from http import HTTPStatus

from cases.domain.access.roles import Role
from cases.domain.feed import FeedKind
from cases.models import Case, Change
from cases.services.common.feed import number
from cases.services.webhooks import keeping, outbox
from cases.services.webhooks.keeping import Keeper
from cases.services.webhooks.line import Reply
from tests import factories
from tests.cast import open_case

KIND = FeedKind.CASE_CHANGED


class Sender:
    """Does each piece of a worker's work by itself."""

    at_a_time = outbox.AT_A_TIME

    def __init__(self) -> None:
        self.case, self.elsewhere = _case("priya"), _case("tom")
        self.keeper = Keeper(actor=factories.member(self.case.programme, "rosa", Role.COORDINATOR))
        self.hook = keeping.add(
            keeper=self.keeper,
            programme_id=self.case.programme_id,
            address="https://receiver.example/changes",
            kinds=[KIND],
            reached=0,
        )
        self.held: outbox.Batch | None = None

    def changes_elsewhere(self) -> None:
        """Changes of which nobody is told."""
        self._change(self.elsewhere)

    def messages(self) -> None:
        """As many changes, laid out as messages and taken up."""
        self._change(self.case)
        self.held = outbox.take_up(webhook_id=self.hook.pk)
        assert self.held
        assert len(self.held.deliveries) == self.at_a_time

    def noted(self) -> None:
        """All of them noted as taken, and given back."""
        assert self.held
        for delivery in self.held.deliveries:
            assert outbox.note(batch=self.held, delivery=delivery, reply=Reply(status=HTTPStatus.NO_CONTENT))
        outbox.give_back(batch=self.held)

    def looked(self) -> None:
        """What a worker does each second with nothing due."""
        outbox.number_feeds()
        assert not outbox.due()

    def _change(self, case: Case) -> None:
        row = {"programme_id": case.programme_id, "case_id": case.pk, "subject_id": case.pk, "kind": KIND}
        Change.objects.bulk_create(Change(**row, actor_id=self.keeper.actor.pk) for _ in range(self.at_a_time))
        number(case.programme_id)


def _case(student: str) -> Case:
    programme = factories.ProgrammeFactory.create()
    return open_case(programme, factories.member(programme, student, Role.STUDENT))
