"""What the whole export of 100,000 cases needs: the memory of a served process by pages read, and pages.

    python -m tests.bench.bench_archive [CASES]

Memory is the highest each process of the server ever had (proc(5), VmHWM), of which the largest counts. DATABASE_URL
names an empty database; without it, SQLite. Runs where there is /proc.
"""

from __future__ import annotations

import http.client
import os
import sys
import tempfile
from collections.abc import Iterator
from typing import TYPE_CHECKING

from frontend.server import serve
from frontend.server.serve import Address
from tests import processes
from tests.bench.rows import Row, alone
from tests.bench.scratch import scratch
from tests.bucket import free_port

if TYPE_CHECKING:
    from cases.models import Person

KEY, CASES = "k" * 50, 100_000
TABLES = ("cases", "canal-plans")
MOST_GROWN = 1.1
"""What the last page may have raised the highest memory of the first to."""


class Reader:
    """Somebody who takes a programme's tables along, page by page."""

    def __init__(self, person: Person, programme_id: object, address: Address) -> None:
        from tests.cast import client

        self.session = client(person).cookies["sessionid"].value
        self.at = f"/api/v1/programmes/{programme_id}/export"
        self.line = http.client.HTTPConnection(address.host, address.port, timeout=120)
        self.rows = 0

    def pages(self, table: str) -> Iterator[int]:
        """Reads a table to its end; the bytes of each page."""
        path = f"{self.at}/{table}.ndjson"
        while path:
            self.line.request("GET", path, headers={"Cookie": f"sessionid={self.session}"})
            answer = self.line.getresponse()
            body = answer.read()
            assert answer.status == 200, body
            self.rows += body.count(b"\n")
            yield len(body)
            path = answer.headers.get("Link", "").strip("<").partition(">")[0]


def rows() -> Iterator[Row]:
    with tempfile.TemporaryDirectory() as folder:
        os.environ.update(IMAGE_FOLDER=folder, SECRET_KEY=KEY)
        with scratch():
            yield from _rows(next((int(word) for word in sys.argv[1:] if word.isdecimal()), CASES))


def _rows(cases: int) -> Iterator[Row]:
    from tests.bench.chair import Chair
    from tests.many import copies

    chair, address = Chair(), Address("127.0.0.1", free_port())
    for _ in copies(chair.version, cases - 1):
        pass
    server = serve.start(address, {"SECRET_KEY": KEY, "ALLOWED_HOSTS": "127.0.0.1", "LOG_LEVEL": "CRITICAL"})
    try:
        reader = Reader(chair.supervisor, chair.programme.pk, address)
        for table in TABLES:
            reader.rows = 0
            highest_bytes = [_highest_bytes(server.pid) for _ in reader.pages(table)]
            what = f"{reader.rows:,d} rows of {table} in {len(highest_bytes)} pages"
            against = "memory after the first page"
            yield Row(what=what, now=highest_bytes[-1] / highest_bytes[0], against=against, goal=MOST_GROWN)
            yield Row(what=f"{what}, at most", now=highest_bytes[-1] / 1_000_000, against="MB")
    finally:
        serve.stop(server)


def _highest_bytes(server: int) -> int:
    return max(processes.sizes(process).get("VmHWM", 0) for process in (server, *processes.below(server)))


if __name__ == "__main__":
    alone("archive", rows())
