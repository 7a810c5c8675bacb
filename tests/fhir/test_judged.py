"""What is sent as FHIR R4 is right to outside judges, who notice what is wrong: the whole of every patient of the
demonstration and of drawn cases, and what goes wrong in a case. Run by a part of its own, as the judges need Node.
"""

from __future__ import annotations

import copy
from collections.abc import Callable, Iterator
from hashlib import sha256
from typing import Any

import pytest
from django.utils import timezone

from cases.domain.events.payloads import UndoPayload
from cases.domain.struck import StruckWhy
from cases.domain.uuid7 import uuid7
from cases.models import Case, DemoPatient, LengthReading, Person, ToothPlanVersion, TreatmentEvent
from cases.services.corrections import struck
from cases.services.demo import cases as demo
from cases.services.demo import drawn
from cases.services.demo.drawn import Size
from cases.services.demo.work import Bench
from cases.services.images import upload
from cases.services.images.upload import Announced
from cases.services.planning import revocation
from tests.cases.pictures import intra_oral, picture, written
from tests.cast import *  # noqa: F403
from tests.cast import client
from tests.fhir.judges import Json, Verdict, verdicts

BASE = "/api/fhir/R4"
TYPES = {
    "BodyStructure",
    "Bundle",
    "CapabilityStatement",
    "CarePlan",
    "CodeSystem",
    "DocumentReference",
    "ImagingStudy",
    "Observation",
    "OperationOutcome",
    "Patient",
    "Procedure",
    "Provenance",
    "ServiceRequest",
    "Task",
}


@pytest.fixture
def mishaps(clinic: ToothPlanVersion, priya: Person, vale: Person) -> Case:
    """A case in which much went wrong: a reading struck, a step taken back, the approval withdrawn; and images."""
    case = clinic.case
    bench = Bench(priya, vale, clinic)
    bench.work("P", until="shape")
    last = TreatmentEvent.objects.filter(case=case, kind="step").latest("position")
    bench.tell(priya, last.canal, [("", UndoPayload(undoes=str(last.pk)))])
    reading = LengthReading.objects.filter(canal__tooth__case=case)[0]
    struck.strike(actor=priya, reading=reading, why=StruckWhy.WRONG_CANAL)
    revocation.revoke(actor=vale, version=clinic, seen_hash=clinic.hash, reason="Another case.")
    for data in (picture(), written(intra_oral())):
        announced = Announced(
            id=uuid7(), sha256=sha256(data).hexdigest(), sent_bytes=len(data), device_time=timezone.now()
        )
        upload.receive(actor=priya, case=case, announced=announced, data=data)
    return case


@pytest.fixture(scope="module")
def kept() -> list[Json]:
    return []


@pytest.fixture
def sent(db: None, kept: list[Json], request: pytest.FixtureRequest) -> list[Json]:
    """Everything that is sent, answered once for all tests here."""
    if not kept:
        kept += request.getfixturevalue("answered")
    return kept


@pytest.fixture
def answered(mishaps: Case, vale: Person, monkeypatch: pytest.MonkeyPatch) -> list[Json]:
    """Bundles, what is in them, what the server can do, its codes, a refusal."""
    monkeypatch.setitem(drawn.COUNTS, Size.GROUP, (2, 8))
    demo.load()
    drawn.load(Size.GROUP, seed=5)
    anouk = Person.objects.get(username="anouk")
    answers: list[Json] = []
    for patient in DemoPatient.objects.all():
        asker = vale if patient.programme_id == mishaps.programme_id else anouk
        answer = client(asker).get(f"{BASE}/Patient/{patient.pk}/$everything")
        if patient.programme.memberships.filter(person=asker).exists():
            answers.append(answer.json())
    answers += [client(vale).get(f"{BASE}/{path}").json() for path in ("metadata", "CodeSystem", "Patient/no-one")]
    # One refusal of each kind: nobody signed in, what is not stated, not JSON, nothing written, no such address.
    asked = client(vale)
    answers += [
        client(None).get(f"{BASE}/Patient").json(),
        asked.get(f"{BASE}/Patient?name=Reed&_count=0").json(),
        asked.get(f"{BASE}/Patient?_format=xml").json(),
        asked.post(f"{BASE}/Patient", {}, format="json").json(),
        asked.get("/api/fhir/R5").json(),
    ]
    inside = [entry["resource"] for answer in answers for entry in answer.get("entry", ())]
    return [*answers, *inside]


def test_every_judge_finds_everything_right(sent: list[Json]) -> None:
    assert {each["resourceType"] for each in sent} == TYPES
    assert len(sent) > 300
    assert faults(sent, verdicts(sent)) == []
    statuses = {each["status"] for each in sent if each["resourceType"] in ("Observation", "Procedure", "CarePlan")}
    assert statuses >= {"final", "preliminary", "entered-in-error", "in-progress", "completed", "draft", "revoked"}


def test_references_in_a_bundle_lead_into_it(sent: list[Json]) -> None:
    bundles = [each for each in sent if each["resourceType"] == "Bundle"]
    assert len(bundles) > 15
    leads = 0
    for bundle in bundles:
        inside = {"/".join(entry["fullUrl"].split("/")[-2:]) for entry in bundle["entry"]}
        assert len(inside) == len(bundle["entry"])
        references = set(_references(bundle))
        leads += len(references)
        assert references <= inside
    assert leads > 100


def _references(value: Any) -> Iterator[str]:
    if isinstance(value, dict):
        if isinstance(value.get("reference"), str):
            yield value["reference"]
        value = list(value.values())
    if isinstance(value, list):
        for part in value:
            yield from _references(part)


def faults(resources: list[Json], judged: list[Verdict]) -> list[str]:
    """A line for each thing that a judge finds wrong."""
    return [
        f"{resource['resourceType']}/{resource.get('id', '')} by {judge}: {each}"
        for resource, verdict in zip(resources, judged, strict=True)
        for judge, said in verdict.items()
        for each in said
    ]


# Each is wrong in one way: the type, what is done to it, and who must find it.
WRONG: dict[str, tuple[str, Callable[[Json], Any], set[str]]] = {
    "a code outside": ("Procedure", lambda each: each.update(status="banana"), {"fhir", "rules"}),
    "a code of another set": ("CarePlan", lambda each: each.update(intent="directive"), {"rules"}),
    "a status of no observation": ("Observation", lambda each: each.update(status="done"), {"fhir", "schema"}),
    "something missing": ("Procedure", lambda each: each.pop("status"), {"fhir", "values"}),
    "something unknown": ("Patient", lambda each: each.update(nickname="Reed"), {"fhir", "values", "schema"}),
    "two values": ("Observation", lambda each: each.update(valueString="20"), {"values"}),
    "a reference to a wrong type": (
        "ServiceRequest",
        lambda each: each["subject"].update(reference="Medication/1"),
        {"fhir"},
    ),
    "no date": ("Observation", lambda each: each.update(effectiveDateTime="yesterday"), {"fhir", "values", "schema"}),
    "a number as a text": ("Observation", lambda each: each["valueQuantity"].update(value="20.5"), {"fhir", "schema"}),
    "a blank in an id": ("Task", lambda each: each.update(id="a b"), {"values", "schema"}),
    "one thing for a list": ("Patient", lambda each: each.update(name=each["name"][0]), {"fhir", "values"}),
    "an empty list": ("BodyStructure", lambda each: each.update(image=[]), {"empty"}),
    "an invariant of a resource": ("ServiceRequest", lambda each: each.pop("code"), {"rules"}),
    "an invariant of a type": ("Observation", lambda each: each["valueQuantity"].pop("system"), {"rules"}),
    "one address twice": ("Bundle", lambda each: each["entry"].append(each["entry"][0]), {"rules"}),
    "nothing verified": ("Provenance", lambda each: each.pop("agent"), {"fhir", "values"}),
    "no content": ("DocumentReference", lambda each: each.pop("content"), {"fhir", "values"}),
    "a series that is not named": ("ImagingStudy", lambda each: each["series"][0].pop("uid"), {"fhir", "values"}),
    "a number that is none": ("ImagingStudy", lambda each: each.update(numberOfSeries=-1), {"values"}),
    "a code system without content": ("CodeSystem", lambda each: each.pop("content"), {"fhir", "values"}),
    "a severity of none": ("OperationOutcome", lambda each: each["issue"][0].update(severity="bad"), {"fhir"}),
    "another release": ("CapabilityStatement", lambda each: each.update(fhirVersion="4.0"), {"fhir", "rules"}),
}


def test_what_is_wrong_is_found_by_somebody(sent: list[Json]) -> None:
    wrong = []
    for type_, spoil, _ in WRONG.values():
        each = copy.deepcopy(next(each for each in sent if each["resourceType"] == type_))
        spoil(each)
        wrong.append(each)
    said = [{judge for judge, faults in verdict.items() if faults} for verdict in verdicts(wrong)]
    missed = {
        name: judges for (name, (_, _, due)), judges in zip(WRONG.items(), said, strict=True) if not due <= judges
    }
    assert missed == {}
    # Every type is spoiled once, and every judge is needed for something.
    assert {type_ for type_, _, _ in WRONG.values()} == TYPES
    assert set.union(*said) == {"fhir", "rules", "values", "schema", "empty"}
