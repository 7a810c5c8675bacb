"""The feed under many writers, on both databases: what a reader was told is never told otherwise later."""

from __future__ import annotations

from collections.abc import Callable
from threading import Event

import pytest
from django.db import connection, transaction

from cases.domain.access.roles import Role
from cases.domain.feed import START, Bookmark, FeedKind
from cases.models import Canal, Case, Change, Person, Programme
from cases.queries import feed as feed_read
from cases.queries.feed import Page
from cases.services.charting import canals
from cases.services.common import feed
from tests import factories
from tests.at_once import at_once
from tests.cast import open_case

pytestmark = pytest.mark.usefixtures("database_of_many")

CASES, EACH_WRITES = 5, 4
PATIENCE_S = 60


class Scene:
    """A programme with some cases of one student, read by its supervisor."""

    def __init__(self) -> None:
        self.programme: Programme = factories.ProgrammeFactory.create()
        self.student = factories.member(self.programme, "priya", Role.STUDENT)
        self.supervisor = factories.member(self.programme, "vale", Role.SUPERVISOR)
        self.canals = [_canal(open_case(self.programme, self.student)) for _ in range(CASES)]

    def reads(self, after: Bookmark, limit: int = 7) -> Page:
        feed.number(self.programme.pk)
        return feed_read.page(self.supervisor, self.programme.pk, after=after, limit=limit)


def _canal(case: Case) -> Canal:
    return Canal.objects.filter(tooth__case=case).select_related("tooth__case").order_by("place")[0]


def test_a_reader_misses_nothing_and_sees_no_position_twice_while_many_write() -> None:
    scene, writers = Scene(), 50 if connection.vendor == "postgresql" else 8
    written: list[int] = []

    def writing(number: int) -> Callable[[], None]:
        def write() -> None:
            try:
                for turn in range(EACH_WRITES):
                    point = {"reference_point": f"cusp {number}, {turn}"}
                    canals.change_canal(actor=scene.student, canal=scene.canals[number % CASES], changes=point)
            finally:
                written.append(number)

        return write

    def read() -> list[Change]:
        seen, bookmark, over = [], START, False
        while not over:
            # Whoever writes is asked first: what they wrote before is in the next page, or in one after it.
            over = len(written) == writers
            page = scene.reads(bookmark)
            over = over and not page.more
            seen += [listed.row for listed in page.results]
            bookmark = page.next
        return seen

    seen, also_seen, *_ = at_once(read, read, *(writing(number) for number in range(writers)))
    assert [row.position for row in seen] == list(range(1, CASES + writers * EACH_WRITES + 1))
    assert [row.pk for row in seen] == [row.pk for row in also_seen]
    for canal in scene.canals:
        of_case = [row.pk for row in seen if row.case_id == canal.tooth.case_id]
        # Written under the case's lock, so that their ids are in the order in which they came about.
        assert of_case == sorted(of_case)


def test_what_is_committed_late_comes_later_and_is_not_passed_over() -> None:
    """A transaction that wrote first and ends last: by its own number a reader would have passed it."""
    if connection.vendor == "sqlite":
        pytest.skip("SQLite has one writer at a time: nobody can write in between")
    scene = Scene()
    bookmark = scene.reads(START, limit=1000).next
    wrote, passed = Event(), Event()
    late, early = scene.canals[:2]

    def write_late() -> None:
        with transaction.atomic():
            _tell(scene.student, late)
            wrote.set()
            assert passed.wait(PATIENCE_S)

    def write_early() -> tuple[Page, Page]:
        assert wrote.wait(PATIENCE_S)
        _tell(scene.student, early)
        first = scene.reads(bookmark)
        second = scene.reads(first.next)
        passed.set()
        return first, second

    _, (first, second) = at_once(write_late, write_early)
    third = scene.reads(second.next)
    assert [[listed.row.case_id for listed in page.results] for page in (first, second, third)] == [
        [early.tooth.case_id],
        [],
        [late.tooth.case_id],
    ]
    assert third.results[0].row.position == first.results[0].row.position + 1
    assert third.results[0].row.pk < first.results[0].row.pk


def _tell(actor: Person, canal: Canal) -> None:
    feed.tell(actor=actor, kind=FeedKind.CANAL_CHANGED, subject_id=canal.pk, case=canal.tooth.case)
