"""The record of a worked case, as JSON and on paper, against an empty request (e), by how many entries it has.

    python -m tests.bench.bench_record

Notes are drawn from the words that a bench is spoken of in. DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

import random
from collections.abc import Iterator
from dataclasses import replace

from tests.bench.empty import empty_request
from tests.bench.rows import Row, alone, in_turns
from tests.bench.scratch import scratch

TIMES = 12
COUNTS = (30, 300)
NOTED = 3  # every third entry is a note
TEXT = """
seen under the microscope at first sight then felt with a small file a ledge on the outer wall of the curve passed
after rinsing twice the paper point came out dry and clean bleeding stopped saline warm rubber dam leaks at MB2
checked again by Ä. Größe 12.5 mm ± 0.5 · cusp worn flat
"""


def rows() -> Iterator[Row]:
    with scratch():
        yield from _rows()


def _rows() -> Iterator[Row]:
    from cases.domain.events.payloads import NotePayload
    from cases.domain.uuid7 import uuid7
    from cases.services.treatment import treatment
    from tests.bench.chair import Chair
    from tests.cast import API, client
    from tests.many import copies

    chair, empty, drawn, words = Chair(), empty_request(), random.Random(7), TEXT.split()
    for count, version in zip(COUNTS, copies(chair.version, len(COUNTS)), strict=True):
        events = [
            replace(event, payload=NotePayload(text=" ".join(drawn.choices(words, k=drawn.randint(4, 30)))))
            if number % NOTED == 0
            else event
            for number, event in enumerate(chair.batch(count))
        ]
        treatment.record(actor=chair.student, case=version.case, device=uuid7(), batch=events)
        browser, record = client(chair.student), f"{API}/cases/{version.case_id}/record"

        def asked(address: str) -> None:
            answer = browser.get(address)  # noqa: B023
            assert answer.status_code == 200, answer.content

        asked(f"{record}.pdf")
        works = {
            "empty": empty,
            "record": lambda: asked(record),  # noqa: B023
            "paper": lambda: asked(f"{record}.pdf"),  # noqa: B023
        }
        took = in_turns(works, TIMES)
        name = f"a record of {count} entries"
        yield took["record"].over(took["empty"], what=name, against="e")
        yield took["paper"].over(took["empty"], what=f"{name}, on paper", against="e", goal=60)


if __name__ == "__main__":
    alone("record", rows())
