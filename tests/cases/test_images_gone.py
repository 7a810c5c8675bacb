"""Parts of an upload that was not kept are in no file of the database, SQLite's log included."""

from __future__ import annotations

import time
from collections.abc import Callable
from contextlib import AbstractContextManager
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from django.db import connection
from django.db.utils import ConnectionHandler

from cases.domain.image_errors import ImageRefused
from cases.domain.images import RemovalReason
from cases.models import Case, ImagePart, Person
from cases.services.images import gone, removal, upload
from frontend.server import env
from tests.cases.pictures import noise
from tests.cases.test_images_tidied import announcement, begun

PLANTED = b"Priya at 51.5072 N, 0.1276 W"
Capture = Callable[[], AbstractContextManager[list[Callable[[], Any]]]]


@pytest.mark.django_db
def test_what_is_deleted_is_in_no_file_of_sqlite(tmp_path: Path) -> None:
    """A part as large as the phone sends, through a database with the program's own settings: in its file and in its
    log, before and after.
    """
    described = {"ENGINE": "django.db.backends.sqlite3", "NAME": tmp_path / "records", "OPTIONS": env.SQLITE}
    disk = ConnectionHandler({"default": described})["default"]

    def holding() -> set[str]:
        return {path.name for path in tmp_path.iterdir() if PLANTED in path.read_bytes()}

    with disk.cursor() as cursor:
        # Debian's SQLite does so unasked, others do not.
        assert cursor.execute("PRAGMA secure_delete").fetchone()[0] == 1
        cursor.execute("CREATE TABLE part (id INTEGER PRIMARY KEY, data BLOB)")
        for _ in range(2):
            cursor.execute("INSERT INTO part (data) VALUES (%s)", [PLANTED * 18_000])
        gone.work_off_the_log(disk)
        assert holding() == {"records"}
        cursor.execute("INSERT INTO part (data) VALUES (%s)", [PLANTED * 18_000])
        cursor.execute("DELETE FROM part")
        assert "records-wal" in holding()
        gone.work_off_the_log(disk)
        assert holding() == set()
        assert cursor.execute("PRAGMA busy_timeout").fetchone()[0] == env.SQLITE["timeout"] * 1000
    disk.close()


def refused(priya: Person, case: Case) -> None:
    data = PLANTED * 10
    with pytest.raises(ImageRefused):
        upload.receive_part(actor=priya, case=case, announced=announcement(data), offset=0, data=data)


def removed(priya: Person, case: Case) -> None:
    removal.remove(actor=priya, image=begun(priya, case), reason=RemovalReason.NAMES_SOMEBODY)


def given_up(priya: Person, case: Case) -> None:
    begun(priya, case)
    upload.tidy(older_than=timedelta(days=-1))


@pytest.mark.skipif(connection.vendor != "sqlite", reason="PostgreSQL's files are not written anew at once")
@pytest.mark.parametrize("act", [refused, removed, given_up])
def test_each_way_of_not_being_kept_works_off_the_log(
    act: Callable[[Person, Case], None],
    priya: Person,
    opened: Case,
    django_capture_on_commit_callbacks: Capture,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    worked_off: list[object] = []
    monkeypatch.setattr(gone, "work_off_the_log", worked_off.append)
    with django_capture_on_commit_callbacks(execute=True):  # type: ignore[call-arg]
        act(priya, opened)
    assert worked_off
    assert not ImagePart.objects.exists()


LONGEST_TEST_S = 30
BYTES = """
SELECT pg_relation_size(oid) + pg_relation_size(reltoastrelid) FROM pg_class WHERE relname = 'cases_imagepart'
"""


@pytest.mark.skipif(connection.vendor != "postgresql", reason="how PostgreSQL keeps a table")
@pytest.mark.django_db(transaction=True)
def test_tidying_writes_postgresqls_table_anew(priya: Person, opened: Case) -> None:
    """PostgreSQL's manual, 'Database Object Size Functions': bytes of the table and of its long values."""

    def size() -> int:
        with connection.cursor() as cursor:
            cursor.execute(BYTES)
            return int(cursor.fetchone()[0])

    image = begun(priya, opened)
    ImagePart.objects.create(image=image, offset=10, length=0, data=noise(500, 400))
    ImagePart.objects.all().delete()
    assert size() > 500_000
    gone.from_the_table(ImagePart)
    # Transactions of other tests may be older than the deleting; none of them lasts.
    until = time.monotonic() + LONGEST_TEST_S
    while size() > 0 and time.monotonic() < until:
        time.sleep(0.1)
        gone.from_the_table(ImagePart)
    assert size() == 0
