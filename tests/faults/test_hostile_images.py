"""340 images that mean harm, sent to a real server: none makes it fall over, and nothing of one is in any file after.

HOSTILE_IMAGES and SEED draw another number and others.
"""

from __future__ import annotations

import base64
import hashlib
import http.client
import json
import os
import socket
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random

import pytest
from django.conf import settings
from django.core.management import call_command
from django.db import connection

from cases.domain.uuid7 import uuid7
from cases.models import Image, ToothPlanVersion
from frontend.server import serve
from frontend.server.serve import Address
from tests.cast import API, client
from tests.faults.hostile_images import PLANTED, drawn
from tests.faults.readers import Readers

COUNT = int(os.environ.get("HOSTILE_IMAGES", "340"))
SEED = int(os.environ.get("SEED", "340"))
IN_PARTS = 0.5  # how often an image comes so
MOST_PARTS = 8
BUSY, TRIES = 503, 6
# To start, and to be seen by who watches, on a busy machine.
AROUND_S = 2.0
LONGEST_ANSWER_S = 90


@dataclass(frozen=True, slots=True)
class Sender:
    """A phone that sends images to one case."""

    address: Address
    case: str
    session: str

    def send(self, data: bytes, dice: Random) -> tuple[str, int, str]:
        """Its id, the status of the last answer, and where it stands by that."""
        id_ = str(uuid7())
        if dice.random() > IN_PARTS:
            return id_, *self._until_taken(id_, data, None, data)
        status, text, offset = 0, "", 0
        while offset < len(data):
            until = offset + dice.randint(-(-len(data) // MOST_PARTS), settings.IMAGE_MOST_PART_BYTES)
            status, text = self._until_taken(id_, data[offset:until], offset, data)
            offset = until
        return id_, status, text

    def _until_taken(self, id_: str, piece: bytes, offset: int | None, whole: bytes) -> tuple[int, str]:
        status, text = self._ask(id_, piece, offset, whole)
        for _ in range(TRIES):
            if status != BUSY:
                break
            time.sleep(1)
            status, text = self._ask(id_, piece, offset, whole)
        return status, text

    def _ask(self, id_: str, piece: bytes, offset: int | None, whole: bytes) -> tuple[int, str]:
        line = http.client.HTTPConnection(self.address.host, self.address.port, timeout=LONGEST_ANSWER_S)
        token = "t" * 32
        headers = {
            "Cookie": f"csrftoken={token}; sessionid={self.session}",
            "X-CSRFToken": token,
            "Repr-Digest": f"sha-256=:{base64.b64encode(hashlib.sha256(whole).digest()).decode()}:",
            "Content-Type": "application/octet-stream",
        }
        if offset is not None:
            headers |= {"Upload-Offset": str(offset), "Upload-Length": str(len(whole))}
            headers["Content-Type"] = "application/partial-upload"
        path = f"{API}/cases/{self.case}/images/{id_}?canal=P&purpose=length"
        try:
            line.request("PUT" if offset is None else "PATCH", path, piece, headers)
            answer = line.getresponse()
            return answer.status, answer.read().decode(errors="replace")
        finally:
            line.close()


@dataclass(frozen=True, slots=True)
class Running:
    sender: Sender
    process: int
    images: Path


@pytest.fixture
def running(approved: ToothPlanVersion, tmp_path: Path) -> Iterator[Running]:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        address = Address("127.0.0.1", int(probe.getsockname()[1]))
    images = tmp_path / "images"
    variables = {"SECRET_KEY": settings.SECRET_KEY, "ALLOWED_HOSTS": "127.0.0.1", "LOG_LEVEL": "CRITICAL"}
    server = serve.start(address, {**variables, "IMAGE_FOLDER": str(images)})
    session = client(approved.case.student).cookies["sessionid"].value
    try:
        yield Running(Sender(address, str(approved.case_id), session), server.pid, images)
    finally:
        serve.stop(server)


def test_hostile_images(running: Running) -> None:
    dice, count, after = Random(SEED), Counter[str](), []
    with Readers(running.process) as readers:
        for what, data in drawn(COUNT, Random(f"{SEED} images")):
            began = time.monotonic()
            id_, status, text = running.sender.send(data, dice)
            after.append(time.monotonic() - began)
            assert status < 500, (what, status, text)
            assert PLANTED.decode() not in text, what
            state = Image.objects.filter(pk=id_).values_list("state", flat=True).first()
            assert (state == "stored") == (status < 300), (what, status, text, state)
            count[f"{state or 'not taken'} {status}"] += 1
    _told(count, readers, after)
    assert count["stored 201"] + count["stored 200"] >= COUNT // 8
    assert sum(number for kind, number in count.items() if kind.startswith("refused")) >= COUNT // 4
    _within_bounds(readers)
    left = [path for path in _files(running.images) if PLANTED in path.read_bytes()]
    assert left == []


def _told(count: Counter[str], readers: Readers, after: list[float]) -> None:
    every_reader = readers.by_process.values()
    most = {
        "readers": len(every_reader),
        "at once": readers.at_once,
        "addresses MB": max(reader.addresses_bytes for reader in every_reader) // 1_000_000,
        "memory MB": max(reader.memory_bytes for reader in every_reader) // 1_000_000,
        "reader s": round(max(reader.seconds for reader in every_reader), 1),
        "answer s": round(max(after), 1),
    }
    print(f"\nseed {SEED}, {connection.vendor}: {COUNT} images {json.dumps(count)}, at most {json.dumps(most)}")


def _within_bounds(readers: Readers) -> None:
    every_reader = readers.by_process.values()
    assert len(every_reader) >= COUNT // 4
    assert readers.at_once <= 2
    assert max(reader.addresses_bytes for reader in every_reader) <= settings.IMAGE_READ_MEMORY_BYTES
    assert max(reader.seconds for reader in every_reader) <= settings.IMAGE_READ_SECONDS + AROUND_S


def _files(images: Path) -> Iterator[Path]:
    """Everything that is kept: the images, and the files of the database with those beside them."""
    yield from (path for path in images.rglob("*") if path.is_file())
    if connection.vendor == "sqlite":
        database = Path(str(connection.settings_dict["NAME"]))
        yield from database.parent.glob(f"{database.name}*")
        return
    # What is deleted goes when the table is written anew; its log of changes is told apart in the README.
    call_command("tidy", verbosity=0)
    with connection.cursor() as cursor:
        cursor.execute("CHECKPOINT")
        cursor.execute("SHOW data_directory")
        folder = Path(cursor.fetchone()[0])
    tables = [path for path in (folder / "base").rglob("*") if path.is_file()]
    assert tables
    yield from tables
