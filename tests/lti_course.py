"""A course on a platform of this machine, and a student's work in it that is graded."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from threading import Event

import pytest
from django.test import Client
from pytest_django.fixtures import Settings

from cases.models import Case, LtiPerson, LtiPlatform, LtiWork, Person, Programme
from cases.services.lti import grades, own_key, platforms
from cases.services.lti.platforms import Registered
from tests.factories import PASSWORD
from tests.lti_platform import Platform, platform

# To make one takes longer than most tests: they all have the same.
a_key = cache(own_key._new)


@pytest.fixture
def course(
    settings: Settings, rosa: Person, programme: Programme, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Platform]:
    """A platform that the programme's coordinator has registered."""
    settings.LTI_HTTP_HERE = True
    monkeypatch.setattr(own_key, "_new", a_key)
    with platform() as here:
        registered = Registered(**here.registered)
        platforms.register(actor=rosa, password=PASSWORD, programme_id=programme.pk, registered=registered)
        here.tool_keys = Client().get("/lti/keys").json()
        yield here


@pytest.fixture
def work(course: Platform, molar: Case, priya: Person) -> LtiWork:
    """Priya has the check molar from a link of the course that is graded."""
    known = LtiPerson.objects.create(platform=LtiPlatform.objects.get(), subject="a7f3-52", person=priya)
    return LtiWork.objects.create(
        person=known,
        deployment_id="1",
        link_id="week-3",
        case=molar,
        line_item=course.line_item,
        record_address=f"https://canals.example/cases/{molar.pk}/record",
    )


def send() -> None:
    for platform_id in grades.due():
        grades.send(platform_id, stopped=Event())
