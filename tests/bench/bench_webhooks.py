"""What it costs to make messages of changes and to note what came of them, set against an empty request; nothing is
sent.

    python -m tests.bench.bench_webhooks

DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

from collections.abc import Iterator
from http import HTTPStatus
from uuid import UUID

from tests.bench.empty import empty_request
from tests.bench.rows import Row, Took, alone, in_turns
from tests.bench.scratch import scratch

TIMES = 40


def rows() -> Iterator[Row]:
    with scratch():
        yield from _rows()


def _rows() -> Iterator[Row]:
    from cases.domain.access.roles import Role
    from cases.domain.feed import FeedKind
    from cases.models import Change
    from cases.services.common.feed import number
    from cases.services.webhooks import keeping, outbox
    from cases.services.webhooks.keeping import Keeper
    from cases.services.webhooks.line import Reply
    from tests import factories
    from tests.cast import open_case

    empty, kind, at_a_time = empty_request(), FeedKind.CASE_CHANGED, outbox.AT_A_TIME
    cases = {}
    for name in ("with", "without"):
        programme = factories.ProgrammeFactory.create()
        cases[name] = open_case(programme, factories.member(programme, f"priya {name}", Role.STUDENT))
        number(programme.pk)
    told = cases["with"].programme_id
    keeper = Keeper(actor=factories.member(cases["with"].programme, "rosa", Role.COORDINATOR))
    address = "https://receiver.example/told"
    hook = keeping.add(keeper=keeper, programme_id=told, address=address, kinds=[kind], reached=0)

    def changes(programme_id: UUID, case_id: UUID) -> None:
        row = {"programme_id": programme_id, "case_id": case_id, "subject_id": case_id, "kind": kind}
        Change.objects.bulk_create(Change(**row, actor_id=keeper.actor.pk) for _ in range(at_a_time))
        number(programme_id)

    def messages() -> None:
        changes(told, cases["with"].pk)
        batch = outbox.take_up(webhook_id=hook.pk)
        assert batch
        assert len(batch.deliveries) == at_a_time
        held.append(batch)

    def noted() -> None:
        batch = held.pop()
        for delivery in batch.deliveries:
            assert outbox.note(batch=batch, delivery=delivery, reply=Reply(status=HTTPStatus.NO_CONTENT))
        outbox.give_back(batch=batch)

    def looked() -> None:
        outbox.number_feeds()
        assert not outbox.due()

    held: list[outbox.Batch] = []
    # The case opened and its canals are told first.
    while batch := outbox.take_up(webhook_id=hook.pk):
        held.append(batch)
        noted()
    works = {
        "empty": empty,
        "changes": lambda: changes(cases["without"].programme_id, cases["without"].pk),
        "messages": messages,
        "noted": noted,
        "nothing due": looked,
    }
    took = in_turns(works, TIMES)
    made = Took(
        took["messages"].least - took["changes"].least,
        took["messages"].median - took["changes"].median,
    )
    yield made.over(took["empty"], what=f"{at_a_time} messages laid out and taken up", against="e")
    yield took["noted"].over(took["empty"], what=f"{at_a_time} messages noted as taken", against="e")
    yield took["nothing due"].over(took["empty"], what="a look with nothing due", against="e")


if __name__ == "__main__":
    alone("webhooks", rows())
