"""What it costs to make messages of changes and to note what came of them, set against an empty request; nothing is
sent.

    python -m tests.bench.bench_webhooks

DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

from collections.abc import Iterator

from tests.bench.empty import empty_request
from tests.bench.rows import Row, Took, alone, in_turns
from tests.bench.scratch import scratch

TIMES = 40


def rows() -> Iterator[Row]:
    with scratch():
        yield from _rows()


def _rows() -> Iterator[Row]:
    from tests.bench.sender import Sender

    sender, empty = Sender(), empty_request()
    works = {
        "empty": empty,
        "changes": sender.changes_elsewhere,
        "messages": sender.messages,
        "noted": sender.noted,
        "nothing due": sender.looked,
    }
    took = in_turns(works, TIMES)
    made = Took(
        took["messages"].least - took["changes"].least,
        took["messages"].median - took["changes"].median,
    )
    yield made.over(took["empty"], what=f"{sender.at_a_time} messages laid out and taken up", against="e")
    yield took["noted"].over(took["empty"], what=f"{sender.at_a_time} messages noted as taken", against="e")
    yield took["nothing due"].over(took["empty"], what="a look with nothing due", against="e")


if __name__ == "__main__":
    alone("webhooks", rows())
