"""What a program sends twice at once, or again after it was cut short, is done once. On both databases."""

from __future__ import annotations

from threading import Event, Thread
from typing import Any

import pytest
from django.db import connection
from rest_framework.test import APIClient

from cases.domain.access.roles import Role
from cases.models import Case, KeptAnswer
from tests import factories
from tests.at_once import at_once
from tests.cast import API, problem
from tests.keys import own_key, program, service_key

pytestmark = pytest.mark.usefixtures("database_of_many")

BENCH = {"patient_alias": "Bench 7", "tooth": {"notation": "iso_3950", "designation": "26"}, "setting": "extracted"}
LONG_S = 30
# On SQLite the second waits for the lock on everything, and is answered as the first was.
of_postgresql = pytest.mark.skipif(connection.vendor != "postgresql", reason="a lock that is asked for without waiting")


class Sender:
    """A program of a student's that opens one case."""

    def __init__(self) -> None:
        self.programme = factories.ProgrammeFactory.create()
        self.text = own_key(factories.member(self.programme, "priya", Role.STUDENT)).text

    def send(self) -> Any:
        asker: APIClient = program(self.text)
        asker.raise_request_exception = False
        address = f"{API}/programmes/{self.programme.pk}/cases"
        return asker.post(address, BENCH, format="json", headers={"Idempotency-Key": '"4711"'})

    def send_into(self, answers: list[Any]) -> None:
        """From a thread of its own, with a connection of its own."""
        try:
            answers.append(self.send())
        finally:
            connection.close()


class Halt:
    """Holds a request that has made everything and keeps its answer, until it is let go on."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.there, self.go_on, self.backend = Event(), Event(), 0
        create = KeptAnswer.objects.create

        def halted(**row: Any) -> Any:
            if not self.there.is_set():
                if connection.vendor == "postgresql":
                    with connection.cursor() as cursor:
                        cursor.execute("SELECT pg_backend_pid()")
                        self.backend = cursor.fetchone()[0]
                self.there.set()
                assert self.go_on.wait(LONG_S)
            return create(**row)

        monkeypatch.setattr(KeptAnswer.objects, "create", halted)


def test_one_case_put_twice_at_once_by_its_key_is_one() -> None:
    programme = factories.ProgrammeFactory.create()
    student = factories.member(programme, "priya", Role.STUDENT)
    text = service_key(factories.member(programme, "rosa", Role.COORDINATOR)).text
    address = f"{API}/programmes/{programme.pk}/cases/by-external-id/4711"

    def put() -> Any:
        return program(text).put(address, {**BENCH, "student_id": str(student.pk)}, format="json")

    assert sorted(each.status_code for each in at_once(put, put)) == [200, 201]
    assert Case.objects.count() == 1


def test_of_two_at_once_one_is_done() -> None:
    sender = Sender()
    answers = at_once(sender.send, sender.send)
    assert {each.status_code for each in answers} <= {201, 409}
    again = sender.send()
    assert again.status_code == 201
    assert {each.content for each in answers if each.status_code == 201} == {again.content}
    assert Case.objects.count() == 1


@of_postgresql
def test_while_the_first_is_under_way_the_second_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    sender, halt, answers = Sender(), Halt(monkeypatch), list[Any]()
    first = Thread(target=sender.send_into, args=(answers,))
    first.start()
    assert halt.there.wait(LONG_S)
    problem(sender.send(), 409, "still-under-way")
    halt.go_on.set()
    first.join(LONG_S)
    assert [each.status_code for each in answers] == [201]
    assert sender.send().content == answers[0].content
    assert Case.objects.count() == 1


@of_postgresql
def test_a_request_whose_process_dies_holds_its_key_no_longer(monkeypatch: pytest.MonkeyPatch) -> None:
    """The database sees of a process that was killed that its connection is gone."""
    sender, halt, answers = Sender(), Halt(monkeypatch), list[Any]()
    first = Thread(target=sender.send_into, args=(answers,))
    first.start()
    assert halt.there.wait(LONG_S)
    with connection.cursor() as cursor:
        cursor.execute("SELECT pg_terminate_backend(%s, 10000)", [halt.backend])
        assert cursor.fetchone() == (True,)
    second = sender.send()
    assert second.status_code == 201
    halt.go_on.set()
    first.join(LONG_S)
    assert [each.status_code for each in answers] == [500]
    assert Case.objects.count() == 1
