"""What the first requests would otherwise wait for, done before anybody asks."""

from __future__ import annotations

import gc
from typing import get_args
from wsgiref.types import WSGIApplication

from django.conf import settings
from django.db import DatabaseError, connections
from django.middleware.csrf import CSRF_SECRET_LENGTH
from django.urls import get_resolver

from cases.api.fields import FieldsOf
from cases.api.v1 import sessions
from cases.domain.events.payloads import EventPayload
from cases.domain.progress.kept import KeptFold
from cases.domain.progress.summary import CaseSummary, StepInHand
from cases.domain.record.values.record import Record
from cases.mapping import courses
from cases.models import Person, prepared
from cases.queries.course import CanalCourseShown
from cases.services.treatment.treatment import ReceivedEvent
from frontend.server.front.gateway import Environ, answered, own_question
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan, ToothNames
from planning.foundation.encoding import Mode, prepare_reading, prepare_writing

READ = ((Plan, Mode.KEPT), (PlanInput, Mode.KEPT), (EventPayload, Mode.KEPT), (KeptFold, Mode.ANSWERED))
WRITTEN = (
    *get_args(EventPayload),
    ReceivedEvent,
    CaseSummary,
    StepInHand,
    KeptFold,
    CanalCourseShown,
    Record,
    ToothNames,
)
EVERY_HOST = "*"
SIGNED_IN_TO = "/api/v1/session"


def warm(application: WSGIApplication) -> None:
    """Leaves no connection open, as other processes are made from this one. Without a database it does what it can."""
    # To find addresses by name Django reads them all, with their views.
    get_resolver().reverse_dict  # noqa: B018
    for kept, mode in READ:
        prepare_reading(kept, mode)
    for kept in WRITTEN:
        prepare_writing(kept)
    for shape in FieldsOf.__subclasses__():
        shape().get_fields()
    try:
        prepared.prepare_all()
        courses.read_worked()
        # A session that nobody has is looked for as any other is.
        answered(application, own_question(SIGNED_IN_TO) | stranger(), b"")
        sessions.session_of(Person())
    except DatabaseError:
        return
    finally:
        connections.close_all()
        # All that is there by now stays: looking through it for what can be let go of would hold up somebody's request
        # for a tenth of a second, the first one's soon after the start.
        gc.collect()
        gc.freeze()


def stranger() -> Environ:
    """Comes by a name that is allowed, as the proxy says that people come, with cookies of an earlier time."""
    host, *_ = settings.ALLOWED_HOSTS
    return {
        "HTTP_HOST": "localhost" if host == EVERY_HOST else host.lstrip("."),
        "HTTP_COOKIE": f"{settings.SESSION_COOKIE_NAME}=nobody; {settings.CSRF_COOKIE_NAME}={'n' * CSRF_SECRET_LENGTH}",
        "wsgi.url_scheme": "https",
        "HTTP_X_FORWARDED_PROTO": "https",
    }
