"""Any request the description allows, and many it does not: never a broken answer. Judge: the schemathesis package.

Each operation is asked as the one who may, about things that exist: the molar of the check case, submitted.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import Any

import pytest
import schemathesis
import yaml
from django.core.signals import request_finished, request_started
from django.core.wsgi import get_wsgi_application
from django.db import close_old_connections
from django.utils import timezone
from hypothesis import HealthCheck, settings
from schemathesis import GenerationMode, checks
from schemathesis.core.parameters import ParameterLocation

from cases.domain.uuid7 import uuid7
from cases.models import CautionOverride, Kit, LengthReading, LtiPlatform, Person, ToothPlanVersion
from cases.services.images import upload
from cases.services.images.upload import Announced
from cases.services.lti import platforms
from cases.services.lti.platforms import Registered
from cases.services.webhooks import keeping
from cases.services.webhooks.keeping import Keeper
from tests.cases.pictures import picture
from tests.cast import API, canal_of, client
from tests.factories import PASSWORD
from tests.oauth import for_itself

EXAMPLES = 4  # of each operation: some thirty operations in about half a minute
PICTURE = picture()
JUDGED = (
    checks.not_a_server_error,
    checks.status_code_conformance,
    checks.content_type_conformance,
    checks.response_schema_conformance,
)
schemathesis.serializer.alias("application/partial-upload", "application/octet-stream")
# That the server tells this very description is tested apart (`openapi`); to make it anew takes long.
AGREED = Path(__file__).parents[1] / "architecture" / "openapi.yaml"
schema = schemathesis.openapi.from_dict(yaml.load(AGREED.read_text(encoding="utf-8"), yaml.CSafeLoader))
schema.app = get_wsgi_application()
# Signing in and out is tested on its own: it would end the session that asks.
records = schema.include(
    path_regex=f"^{API}/(programmes|cases|canals|readings|junctions|plan-versions|overrides|push-|keys|problems)"
).exclude(path="/session")


@pytest.fixture
def things(submitted: ToothPlanVersion, vale: Person, rosa: Person) -> dict[str, str]:
    case = submitted.case
    override = CautionOverride.objects.create(
        sent_hash="", case=case, code="apex-wide", reason="Seen.", supervisor=vale, version=submitted
    )
    reading = LengthReading.objects.filter(canal__tooth__case=case)[0]
    announced = Announced(
        id=uuid7(), sha256=sha256(PICTURE).hexdigest(), sent_bytes=len(PICTURE), device_time=timezone.now()
    )
    webhook = keeping.add(
        keeper=Keeper(actor=rosa),
        programme_id=case.programme_id,
        address="https://records.example/",
        kinds=[],
        reached=0,
    )
    image = upload.receive(actor=case.student, case=case, announced=announced, data=PICTURE)
    return {
        "page": "tour",
        "table": "cases",
        "programme_id": str(case.programme_id),
        "case_id": str(case.pk),
        "canal_id": str(canal_of(case, "P").pk),
        "version_id": str(submitted.pk),
        "hash_": submitted.hash,
        "override_id": str(override.pk),
        "image_id": str(image.pk),
        "webhook_id": str(webhook.pk),
        "delivery_id": str(uuid7()),
        "client_id": str(for_itself(rosa).row.pk),
        "platform_id": str(platform_of(rosa).pk),
        "marking_id": str(uuid7()),
        "bend_id": str(uuid7()),
        "key_id": str(uuid7()),
        "kit_id": str(Kit.objects.filter(programme=case.programme_id)[0].pk),
        "person_id": str(case.student_id),
        "external_id": "7",
        "review_id": str(uuid7()),
        "reading_id": str(reading.pk),
        "name": "MB",
        "key": "passes.gain",
        "tooth": "16",
        "code": "not-found",
        "canal": "P",
    }


def platform_of(coordinator: Person) -> LtiPlatform:
    registered = Registered(
        name="Courses",
        issuer="https://courses.example",
        client_id="7",
        deployment_ids=["1"],
        login_address="https://courses.example/authorize",
        token_address="https://courses.example/token",
        key_set_address="https://courses.example/keys",
    )
    programme_id = coordinator.memberships.get().programme_id
    return platforms.register(actor=coordinator, password=PASSWORD, programme_id=programme_id, registered=registered)


SignedIn = Callable[[Person], dict[str, str]]


@pytest.fixture
def signed_in(db: None) -> SignedIn:
    """The cookies of somebody's browser, signed in once for all requests of an operation."""

    @cache
    def cookies(person: Person) -> dict[str, str]:
        browser = client(person)
        browser.get(f"{API}/session")
        return {name: browser.cookies[name].value for name in ("sessionid", "csrftoken")}

    return cookies


@contextmanager
def one_connection() -> Iterator[None]:
    """A server closes its connection after a request; here it holds the test's rows."""
    closing = (request_started, request_finished)
    for signal in closing:
        signal.disconnect(close_old_connections)
    yield
    for signal in closing:
        signal.connect(close_old_connections)


@records.parametrize()
@settings(max_examples=EXAMPLES, deadline=None, suppress_health_check=list(HealthCheck))
def test_any_request(
    case: Any, things: dict[str, str], signed_in: SignedIn, priya: Person, vale: Person, rosa: Person
) -> None:
    who = {
        "reviews": vale,
        "worklist": vale,
        "people": vale,
        "service-keys": rosa,
        "webhooks": rosa,
        "overrides": vale,
        "kits": rosa,
        "techniques": rosa,
        "figures": rosa,
        "widths": rosa,
    }
    parts = case.operation.path.split("/")
    person = next((who[part] for part in reversed(parts) if part in who), priya)
    case.cookies = dict(signed_in(person))
    case.headers["X-CSRFToken"] = case.cookies["csrftoken"]
    case.headers["Accept-Encoding"] = "identity"  # the judge reads answers as they are
    case.path_parameters = {name: things[name] for name in case.path_parameters or {}}
    # Of what is described an answer with chosen fields has these alone; `test_chosen_fields` holds it to them.
    (case.query or {}).pop("fields", None)
    judged = [*JUDGED, checks.negative_data_rejection] if _body_is_wrong(case) else [*JUDGED]
    with one_connection():
        case.call_and_validate(checks=judged)


def _body_is_wrong(case: Any) -> bool:
    """Addresses and cookies are put right above, so only the body is still as it was drawn."""
    if case.media_type == "multipart/form-data":
        return False  # a form cannot tell an empty field from one that was left out
    body = case.meta.components.get(ParameterLocation.BODY) if case.meta else None
    return body is not None and body.mode is GenerationMode.NEGATIVE
