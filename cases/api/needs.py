"""What each operation asks of an access key, all of it, in one table. What has no row is opened by no key.

A session needs no scope: a person at the app is asked for their rights alone.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from enum import StrEnum
from functools import cache

from cases.domain.access.scopes import Scope

PREFIX = "/api/v1/"
FHIR_PREFIX = "/api/fhir/R4/"


class Without(StrEnum):
    """Operations that no scope is for."""

    SIGN_IN = "open to everybody"
    SCOPE = "open to whoever is signed in, with any key"
    KEY = "for people who are signed in at the app, and no key"


Need = Scope | Without

_READ, _CHART, _SUBMIT = Scope.CASES_READ, Scope.CASES_WRITE, Scope.PLANS_SUBMIT
_REVIEW, _TELL = Scope.REVIEWS_WRITE, Scope.EVENTS_WRITE
_SEE_IMAGE, _IMAGE = Scope.IMAGES_READ, Scope.IMAGES_WRITE
_HOOK = Scope.WEBHOOKS
_PROGRAMME, _CASE = "programmes/{programme_id}", "cases/{case_id}"
_WEBHOOK = f"{_PROGRAMME}/webhooks/{{webhook_id}}"
_IMAGE_OF_CASE, _VERSION = f"{_CASE}/images/{{image_id}}", "plan-versions/{version_id}"
NEEDS: Mapping[str, Mapping[str, Need]] = {
    # --- open, and computing, which keeps nothing ---
    "schema": {"GET": Without.SIGN_IN},
    "docs": {"GET": Without.SIGN_IN},
    "teeth": {"GET": Without.SIGN_IN},
    "teeth/{iso}": {"GET": Without.SIGN_IN},
    "techniques": {"GET": Without.SIGN_IN},
    "problems": {"GET": Without.SIGN_IN},
    "problems/{code}": {"GET": Without.SIGN_IN},
    "guide/{page}": {"GET": Without.SIGN_IN},
    "difficulty-factors": {"GET": Without.SIGN_IN},
    "instrument-sizes": {"GET": Without.SIGN_IN},
    "compute/tooth": {"POST": Without.SIGN_IN},
    "compute/technique-check": {"POST": Without.SCOPE},
    "compute/length": {"POST": Without.SCOPE},
    "compute/curvature": {"POST": Without.SCOPE},
    "compute/measure": {"POST": Without.SCOPE},
    "compute/two-views": {"POST": Without.SCOPE},
    "compute/run-sheet": {"POST": Without.SCOPE},
    "compute/plan": {"POST": Without.SCOPE},
    # --- signing in: no key makes another, nor changes how somebody signs in or is notified ---
    "session": {"GET": Without.KEY, "POST": Without.KEY, "DELETE": Without.KEY},
    "join": {"POST": Without.KEY},
    "join/link": {"POST": Without.KEY},
    "join/new-account": {"POST": Without.KEY},
    "one-time-code": {"GET": Without.KEY, "POST": Without.KEY, "DELETE": Without.KEY},
    "one-time-code/confirm": {"POST": Without.KEY},
    "push-key": {"GET": Without.KEY},
    "push-subscription": {"PUT": Without.KEY, "DELETE": Without.KEY},
    "key": {"GET": Without.SCOPE},
    "keys": {"GET": Without.KEY, "POST": Without.KEY},
    "keys/{key_id}": {"GET": Without.KEY, "DELETE": Without.KEY},
    f"{_PROGRAMME}/service-keys": {"GET": Without.KEY, "POST": Without.KEY},
    f"{_PROGRAMME}/service-keys/{{key_id}}": {"GET": Without.KEY, "DELETE": Without.KEY},
    f"{_PROGRAMME}/clients": {"GET": Without.KEY, "POST": Without.KEY},
    f"{_PROGRAMME}/clients/{{client_id}}": {"GET": Without.KEY, "DELETE": Without.KEY},
    "consents": {"GET": Without.KEY},
    "consents/{consent_id}": {"DELETE": Without.KEY},
    f"{_PROGRAMME}/lti-platforms": {"GET": Without.KEY, "POST": Without.KEY},
    f"{_PROGRAMME}/lti-platforms/{{platform_id}}": {"GET": Without.KEY, "PUT": Without.KEY},
    # --- the programme; what it keeps is changed by its coordinator at the app ---
    _PROGRAMME: {"GET": _READ},
    f"{_PROGRAMME}/people": {"GET": Scope.PEOPLE_READ},
    f"{_PROGRAMME}/people/{{person_id}}": {"GET": Scope.PEOPLE_READ, "PATCH": Without.KEY, "DELETE": Without.KEY},
    f"{_PROGRAMME}/former-people": {"GET": Without.KEY},
    f"{_PROGRAMME}/people-list-check": {"POST": Without.KEY},
    f"{_PROGRAMME}/invitations": {"GET": Without.KEY, "POST": Without.KEY},
    f"{_PROGRAMME}/invitations/{{invitation_id}}": {"GET": Without.KEY, "DELETE": Without.KEY},
    f"{_PROGRAMME}/invitations/{{invitation_id}}/link": {"POST": Without.KEY},
    f"{_PROGRAMME}/people/{{person_id}}/external-id": {"PUT": _CHART, "DELETE": _CHART},
    f"{_PROGRAMME}/kits/{{kit_id}}/external-id": {"PUT": _CHART, "DELETE": _CHART},
    f"{_PROGRAMME}/kits": {"GET": _READ, "POST": Without.KEY},
    f"{_PROGRAMME}/techniques": {"GET": _READ, "POST": Without.KEY},
    f"{_PROGRAMME}/kits/{{kit_id}}": {"GET": _READ},
    f"{_PROGRAMME}/techniques/{{key}}": {"GET": _READ},
    f"{_PROGRAMME}/figures": {"GET": _READ},
    f"{_PROGRAMME}/figures/{{key}}": {"PUT": Without.KEY, "DELETE": Without.KEY},
    f"{_PROGRAMME}/widths": {"GET": _READ},
    f"{_PROGRAMME}/widths/{{tooth}}/{{canal}}": {"PUT": Without.KEY, "DELETE": Without.KEY},
    f"{_PROGRAMME}/cases": {"GET": _READ, "POST": _CHART},
    f"{_PROGRAMME}/cases/by-external-id/{{external_id}}": {"GET": _READ, "PUT": _CHART},
    f"{_PROGRAMME}/running-work": {"GET": _READ},
    f"{_PROGRAMME}/worklist": {"GET": _READ},
    f"{_PROGRAMME}/changes": {"GET": _READ},
    f"{_PROGRAMME}/export": {"GET": Scope.EXPORT},
    f"{_PROGRAMME}/export/{{table}}.ndjson": {"GET": Scope.EXPORT},
    f"{_PROGRAMME}/export/{{table}}.csv": {"GET": Scope.EXPORT},
    f"{_PROGRAMME}/webhooks": {"GET": _HOOK, "POST": _HOOK},
    _WEBHOOK: {"GET": _HOOK, "PATCH": _HOOK, "DELETE": _HOOK},
    f"{_WEBHOOK}/secret": {"POST": _HOOK},
    f"{_WEBHOOK}/replay": {"POST": _HOOK},
    f"{_WEBHOOK}/deliveries": {"GET": _HOOK, "POST": _HOOK},
    f"{_WEBHOOK}/deliveries/{{delivery_id}}": {"GET": _HOOK},
    # --- practice is a student's own, seen by their supervisors: no program does it for anybody ---
    f"{_PROGRAMME}/practice": {"GET": Without.KEY},
    f"{_PROGRAMME}/practice-exercises": {"GET": Without.KEY, "POST": Without.KEY},
    f"{_PROGRAMME}/practice-tasks": {"GET": Without.KEY, "POST": Without.KEY},
    f"{_PROGRAMME}/practice-tasks/{{task_id}}": {"GET": Without.KEY},
    f"{_PROGRAMME}/practice-tasks/{{task_id}}/withdraw": {"POST": Without.KEY},
    "practice-exercises/{exercise_id}": {"GET": Without.KEY},
    "practice-exercises/{exercise_id}/acts": {"POST": Without.KEY},
    "practice-exercises/{exercise_id}/end": {"POST": Without.KEY},
    # --- a case ---
    _CASE: {"GET": _READ, "PATCH": _CHART},
    f"{_CASE}/external-id": {"PUT": _CHART, "DELETE": _CHART},
    f"{_CASE}/canals": {"GET": _READ, "POST": _CHART},
    f"{_CASE}/roots/{{name}}": {"PUT": _CHART},
    "canals/{canal_id}": {"GET": _READ, "PATCH": _CHART, "DELETE": _CHART},
    "canals/{canal_id}/readings": {"GET": _READ, "POST": _CHART},
    "canals/{canal_id}/junctions": {"POST": _CHART},
    "canals/{canal_id}/bends-in-space": {"GET": _READ},
    "canals/{canal_id}/bends-in-space/{bend_id}": {"GET": _READ, "PUT": _CHART},
    "readings/{reading_id}": {"GET": _READ},
    "junctions/{reading_id}": {"GET": _READ},
    "readings/{reading_id}/strike": {"POST": _CHART},
    "junctions/{reading_id}/strike": {"POST": _CHART},
    f"{_CASE}/record": {"GET": _READ},
    f"{_CASE}/record.pdf": {"GET": Scope.EXPORT},
    f"{_CASE}/course.pdf": {"GET": Scope.EXPORT},
    f"{_CASE}/bands": {"GET": _READ},
    # --- its images; that one names nobody is said by who looked ---
    f"{_CASE}/images": {"GET": _SEE_IMAGE, "POST": _IMAGE},
    _IMAGE_OF_CASE: {"GET": _SEE_IMAGE, "PUT": _IMAGE, "PATCH": _IMAGE},
    f"{_IMAGE_OF_CASE}/content": {"GET": _SEE_IMAGE},
    f"{_IMAGE_OF_CASE}/thumbnail": {"GET": _SEE_IMAGE},
    f"{_IMAGE_OF_CASE}/data-set": {"GET": _SEE_IMAGE},
    f"{_IMAGE_OF_CASE}/markings": {"GET": _SEE_IMAGE},
    f"{_IMAGE_OF_CASE}/markings/{{marking_id}}": {"GET": _SEE_IMAGE, "PUT": _IMAGE},
    f"{_IMAGE_OF_CASE}/name-check": {"POST": Without.KEY},
    f"{_IMAGE_OF_CASE}/remove": {"POST": Without.KEY},
    f"{_IMAGE_OF_CASE}/strike": {"POST": _IMAGE},
    f"{_IMAGE_OF_CASE}/move": {"POST": _IMAGE},
    # --- its plan ---
    f"{_CASE}/preview": {"POST": _SUBMIT},
    f"{_CASE}/preview/changes": {"POST": _SUBMIT},
    f"{_CASE}/plan-versions": {"GET": _READ, "POST": _SUBMIT},
    _VERSION: {"GET": _READ},
    f"{_VERSION}/texts/{{hash_}}": {"GET": _READ},
    f"{_VERSION}/changes": {"GET": _READ},
    f"{_VERSION}/work-sheet.pdf": {"GET": _READ},
    f"{_VERSION}/submit": {"POST": _SUBMIT},
    f"{_VERSION}/withdraw": {"POST": _SUBMIT},
    # --- what only a person says; a code for the bench is typed in by hand ---
    f"{_VERSION}/reviews": {"POST": _REVIEW},
    f"{_VERSION}/reviews/{{review_id}}": {"GET": _READ},
    f"{_VERSION}/release": {"POST": _REVIEW},
    f"{_VERSION}/revoke": {"POST": _REVIEW},
    f"{_CASE}/overrides": {"GET": _READ, "POST": _REVIEW},
    "overrides/{override_id}": {"GET": _READ},
    "overrides/{override_id}/withdraw": {"POST": _REVIEW},
    f"{_CASE}/events": {"GET": _READ, "POST": _TELL},
    f"{_CASE}/on-site-sign-offs": {"POST": Without.KEY},
}
# By type and by id; of what is of images a key without their scope sees nothing anywhere.
FHIR_TYPES: Mapping[str, Need] = {
    "Patient": _READ,
    "BodyStructure": _READ,
    "Observation": _READ,
    "CarePlan": _READ,
    "ServiceRequest": _READ,
    "Task": _READ,
    "Provenance": _READ,
    "Procedure": _READ,
    "DocumentReference": _READ,
    "ImagingStudy": _SEE_IMAGE,
    "CodeSystem": Without.SIGN_IN,
}
FHIR_NEEDS: Mapping[str, Mapping[str, Need]] = {
    "metadata": {"GET": Without.SIGN_IN},
    "Patient/{resource_id}/$everything": {"GET": _READ},
    **{type_: {"GET": need} for type_, need in FHIR_TYPES.items()},
    **{f"{type_}/{{resource_id}}": {"GET": need} for type_, need in FHIR_TYPES.items()},
    "{nothing}": {"GET": Without.SIGN_IN},
}
_PARAMETER = re.compile(r"<(?:\w+:)?(\w+)>")


@cache
def need_of(method: str, route: str) -> Need | None:
    """What an operation asks for; `route` as in a URL conf or in the description. None where nothing is said of it."""
    table = FHIR_NEEDS if _rooted(route).startswith(FHIR_PREFIX) else NEEDS
    return table.get(address_of(route), {}).get("GET" if method == "HEAD" else method)


def address_of(route: str) -> str:
    """The route as these tables have it: below the API or below FHIR's part of it, its parameters in braces."""
    return _PARAMETER.sub(r"{\1}", _rooted(route)).removeprefix(FHIR_PREFIX).removeprefix(PREFIX)


def _rooted(route: str) -> str:
    return "/" + route.removeprefix("/")
