"""Cases read as FHIR R4: what is there, who sees it, how it is searched. That the shapes are right is judged by others
(`tests/fhir`)."""

from __future__ import annotations

from io import BytesIO
from typing import Any

import pytest
from pydicom import dcmread
from pydicom.sr import _concepts_dict as dicom

from cases.api.fhir.types import TYPES
from cases.api.needs import FHIR_TYPES
from cases.domain.access.scopes import Scope
from cases.domain.plans.lifecycle import Decision
from cases.exports.fhir.codes import SNOMED_CT, UNIVERSAL, Codes
from cases.models import Case, Kit, LengthReading, Person, Programme, ToothPlanVersion
from cases.services.charting import canals, cases
from cases.services.planning import plans
from cases.services.planning.plan_input import Asked
from planning import anatomy
from tests.api.fhir_reader import BASE, HOST, ask, ids, shown
from tests.api.test_cases_images import put
from tests.cases.pictures import intra_oral, picture, written
from tests.cast import API, canal_of, client, decide, open_case, with_size
from tests.keys import own_key, program, service_key

# --- what the server says of itself ---


@pytest.mark.one_database
def test_the_capability_statement_says_what_is_there_and_nothing_else(clinic: ToothPlanVersion, priya: Person) -> None:
    stated = ask(None, "metadata")
    assert (stated["fhirVersion"], stated["kind"], stated["implementation"]["url"]) == (
        "4.0.1",
        "instance",
        f"{HOST}{BASE}",
    )
    assert "CC BY 4.0" in stated["copyright"]
    (rest,) = stated["rest"]
    assert [each["type"] for each in rest["resource"]] == list(FHIR_TYPES) == [*TYPES, "CodeSystem"]
    for resource in rest["resource"]:
        parameters = {each["name"]: each["type"] for each in resource["searchParam"]}
        values = {"token": "x", "date": "2026", "reference": "CarePlan/x", "uri": "x"}
        for name, kind in parameters.items():
            assert shown(priya, resource["type"], **{name: values[kind]}) == [] or kind == "date"
        refused = ask(priya, resource["type"], 400, code="x")
        assert "code" in refused["issue"][1]["details"]["text"]
    operations = {each["type"]: each["operation"] for each in rest["resource"] if "operation" in each}
    assert {type_: [each["name"] for each in named] for type_, named in operations.items()} == {
        "Patient": ["everything"]
    }


def test_our_own_codes_lie_at_the_address_they_name(clinic: ToothPlanVersion, priya: Person) -> None:
    named: dict[str, set[str]] = {}
    for entry in ask(priya, f"Patient/{clinic.case.patient_id}/$everything")["entry"]:
        for coding in _codings(entry["resource"]):
            named.setdefault(coding["system"], set()).add(coding["code"])
    own = {system: codes for system, codes in named.items() if system.startswith(HOST)}
    assert len(own) == 3
    for system, codes in own.items():
        answer = ask(None, system.removeprefix(f"{HOST}{BASE}/"))
        assert answer["url"] == system
        assert codes <= {concept["code"] for concept in answer["concept"]}
        assert shown(None, "CodeSystem", url=system) == [answer]


def _codings(value: Any) -> Any:
    if isinstance(value, dict):
        if {"system", "code"} <= value.keys() and "value" not in value:
            yield value
        value = list(value.values())
    if isinstance(value, list):
        for part in value:
            yield from _codings(part)


def test_every_tooth_has_the_codes_that_dicom_gives_it() -> None:
    """Judge: DICOM's own list of SNOMED CT's codes of teeth, context groups 4018 and 4019, as pydicom has them."""
    sct: Any = dicom.concepts["SCT"]
    listed = {
        code: display
        for concepts in sct.values()
        for code, (display, groups) in concepts.items()
        if {4018, 4019} & set(groups)
    }
    coded = {}
    for tooth in anatomy.all_teeth():
        by_system = {each.system: each for each in Codes("x").tooth(tooth.iso).coding}
        coded[by_system[SNOMED_CT].code] = by_system[SNOMED_CT].display
        assert by_system[UNIVERSAL].code == tooth.universal
        words = f"{'' if tooth.primary else 'permanent '}{tooth.name} tooth"
        assert str(by_system[SNOMED_CT].display).lower() == words.lower()
    assert coded.keys() == listed.keys()
    assert len(coded) == 52


# --- what a case is as resources ---


def test_a_patient_is_an_alias_and_marked_as_test_data(molar: Case, priya: Person) -> None:
    (patient,) = shown(priya, "Patient")
    assert patient["id"] == str(molar.patient_id)
    assert patient["meta"]["tag"][0]["code"] == "HTEST"
    assert patient["name"] == [{"text": "Bench 1", "use": "anonymous"}]
    assert patient.keys() == {"resourceType", "id", "meta", "identifier", "name", "managingOrganization"}


def test_a_patient_with_two_cases_is_one(molar: Case, priya: Person, programme: Programme) -> None:
    other = open_case(programme, priya, "36")
    assert len(shown(priya, "Patient")) == 1
    inside = ask(priya, f"Patient/{molar.patient_id}/$everything")["entry"]
    assert [entry["resource"]["resourceType"] for entry in inside].count("Patient") == 1
    assert {str(molar.pk), str(other.pk)} <= {entry["resource"]["id"] for entry in inside}


def test_readings_have_the_numbers_that_the_api_has(molar: Case, priya: Person) -> None:
    observed = {each["id"]: each for each in shown(priya, "Observation")}
    own = {
        "pre_operative_image": "tooth_mm",
        "confirming_image": "set_mm",
        "apex_locator": "read_mm",
        "direct_sight": "seen_mm",
    }
    count = 0
    for canal in client(priya).get(f"{API}/cases/{molar.pk}").json()["canals"]:
        for reading in client(priya).get(f"{API}/canals/{canal['id']}").json()["readings"]:
            same, value = observed[reading["id"]], reading["reading"]
            assert same["valueQuantity"] == {
                "value": value[own[value["method"]]],
                "unit": "mm",
                "code": "mm",
                "system": "http://unitsofmeasure.org",
            }
            beside = {each["code"]["coding"][0]["code"]: each for each in same["component"]}
            assert beside["reference-point"]["valueString"] == value["reference_point"]
            if "tip_short_mm" in value:
                assert beside["tip-short-mm"]["valueQuantity"]["value"] == value["tip_short_mm"]
            assert same["extension"][0]["valueReference"]["reference"] == f"BodyStructure/{canal['id']}"
            assert same["method"]["coding"][0]["code"] == value["method"]
            count += 1
        length = observed[f"{canal['id']}-working-length"]
        assert length["valueQuantity"]["value"] == canal["length"]["working_length_mm"]
        assert length["status"] == ("final" if canal["length"]["state"] == "settled" else "preliminary")
    assert count == LengthReading.objects.filter(canal__tooth__case=molar).count() > 4


@pytest.mark.parametrize(
    ("decision", "plan", "task"),
    [
        (None, "draft", "requested"),
        (Decision.APPROVED, "active", "completed"),
        (Decision.RETURNED, "draft", "rejected"),
    ],
)
def test_a_version_is_asked_for_and_decided_on(
    submitted: ToothPlanVersion, vale: Person, decision: Decision | None, plan: str, task: str
) -> None:
    if decision:
        decide(vale, submitted, decision)
    (care_plan,) = shown(vale, "CarePlan")
    assert (care_plan["id"], care_plan["status"]) == (str(submitted.pk), plan)
    (asked,) = shown(vale, "Task", focus=f"CarePlan/{submitted.pk}")
    assert asked["status"] == task
    decisions = shown(vale, "Provenance", target=f"CarePlan/{submitted.pk}")
    assert len(decisions) == (decision is not None)
    for target in (asked["focus"], *(each["target"][0] for each in decisions)):
        assert target["reference"] == f"CarePlan/{submitted.pk}"
        assert target["identifier"]["value"] == f"nih:sha-256;{submitted.hash}"
    for each in decisions:
        assert each["agent"][0]["who"]["identifier"]["value"] == f"urn:uuid:{vale.pk}"


def test_an_approval_that_counts_no_more_is_no_active_plan(approved: ToothPlanVersion, priya: Person) -> None:
    case = Case.objects.get(pk=approved.case_id)
    (before,) = shown(priya, "CarePlan")
    cases.change_case(actor=priya, case=case, seen_revision=case.revision, changes={"perforation": True})
    (care_plan,) = shown(priya, "CarePlan")
    assert (before["status"], care_plan["status"]) == ("active", "on-hold")
    assert {each["status"] for each in shown(priya, "ServiceRequest")} == {"on-hold"}
    assert care_plan["meta"]["lastUpdated"] > before["meta"]["lastUpdated"]


def test_another_version_replaces_the_one_before(approved: ToothPlanVersion, priya: Person, asked: Asked) -> None:
    case = Case.objects.get(pk=approved.case_id)
    second = plans.propose(actor=priya, case=case, asked=with_size(asked, "P", 35, "Felt wide."))[0]
    by_id = {each["id"]: each for each in shown(priya, "CarePlan")}
    assert by_id[str(second.pk)]["replaces"] == [{"reference": f"CarePlan/{approved.pk}"}]
    assert (by_id[str(approved.pk)]["status"], by_id[str(second.pk)]["status"]) == ("revoked", "draft")


def test_what_was_planned_of_a_canal_stays_under_another_name(clinic: ToothPlanVersion, priya: Person) -> None:
    canal = canal_of(clinic.case, "DB")
    before = {each["id"]: each for each in shown(priya, "ServiceRequest")}
    canals.change_canal(actor=priya, canal=canal, changes={"name": "DB1"})
    after = {each["id"]: each for each in shown(priya, "ServiceRequest")}
    assert before.keys() == after.keys()
    tooth = f"BodyStructure/{clinic.case_id}"
    renamed = [each for id_, each in after.items() if each["extension"] != before[id_]["extension"]]
    assert {each["code"]["text"].partition(":")[0] for each in renamed} == {"DB"}
    assert {each["extension"][0]["valueReference"]["reference"] for each in renamed} == {tooth}


# --- who sees it ---


@pytest.mark.one_database
def test_what_is_of_another_programme_is_not_there(clinic: ToothPlanVersion, priya: Person, stranger: Person) -> None:
    everything = ask(priya, f"Patient/{clinic.case.patient_id}/$everything")["entry"]
    assert {entry["resource"]["resourceType"] for entry in everything} >= set(TYPES) - {"ImagingStudy", "Procedure"}
    for entry in everything:
        resource = entry["resource"]
        path = f"{resource['resourceType']}/{resource['id']}"
        assert ask(priya, path) == resource
        refused = ask(stranger, path, 404)
        assert refused["issue"][0]["code"] == "not-found"
    assert [shown(stranger, type_) for type_ in TYPES] == [[]] * len(TYPES)
    ask(stranger, f"Patient/{clinic.case.patient_id}/$everything", 404)


def test_a_student_sees_their_own_and_a_service_all_of_its_programme(
    molar: Case, tom: Person, rosa: Person, programme: Programme
) -> None:
    other = open_case(programme, tom, "36", patient_alias="Bench 2")
    service = program(service_key(rosa, [Scope.CASES_READ]).text)
    assert ids(shown(tom, "Patient")) == {str(other.patient_id)}
    assert ids(shown(service, "Patient")) == {str(other.patient_id), str(molar.patient_id)}
    assert ask(tom, f"BodyStructure/{molar.pk}", 404)["resourceType"] == "OperationOutcome"


def test_a_service_finds_a_case_by_the_key_it_gave_it(rosa: Person, priya: Person, programme: Programme) -> None:
    service = program(service_key(rosa).text)
    body = {"patient_alias": "Bench 7", "tooth": {"notation": "iso_3950", "designation": "26"}, "setting": "extracted"}
    address = f"{API}/programmes/{programme.pk}/cases/by-external-id/item-7"
    case = service.put(address, body | {"student_id": str(priya.pk)}, format="json").json()
    (tooth,) = shown(service, "BodyStructure", identifier="item-7")
    assert tooth["id"] == case["id"]
    assert shown(service, "BodyStructure", identifier="item-8") == []
    # Nobody else is shown it, nor finds anything by it.
    assert shown(priya, "BodyStructure", identifier="item-7") == []
    assert "item-7" not in str(shown(priya, "BodyStructure"))


def assert_is_the_data_set(study: dict[str, Any], content: bytes) -> None:
    """The study names what stands in the data set, as an outside reader of DICOM finds it."""
    kept = dcmread(BytesIO(content))
    (series,) = study["series"]
    (instance,) = series["instance"]
    assert study["identifier"][0]["value"] == f"urn:oid:{kept.StudyInstanceUID}"
    assert (series["uid"], instance["uid"]) == (kept.SeriesInstanceUID, kept.SOPInstanceUID)
    assert instance["sopClass"] == {"system": "urn:ietf:rfc:3986", "code": f"urn:oid:{kept.SOPClassUID}"}
    assert series["modality"]["code"] == study["modality"][0]["code"] == kept.Modality


def test_images_are_there_for_who_may_see_them(molar: Case, priya: Person) -> None:
    picture_id, film_id = "01900000-0000-7000-8000-0000000000a1", "01900000-0000-7000-8000-0000000000a2"
    put(priya, molar, picture_id, picture(), "?purpose=pre_operative")
    put(priya, molar, film_id, written(intra_oral()), "?purpose=pre_operative")
    assert ids(shown(priya, "DocumentReference")) == {str(molar.pk), picture_id, film_id}
    (study,) = shown(priya, "ImagingStudy")
    assert (study["numberOfInstances"], study["id"]) == (1, str(molar.pk))
    assert_is_the_data_set(study, client(priya).get(f"{API}/cases/{molar.pk}/images/{film_id}/data-set").content)
    film = ask(priya, f"DocumentReference/{film_id}")
    for content in film["content"]:
        attached = client(priya).get(content["attachment"]["url"].removeprefix(HOST))
        assert (attached.status_code, attached["Content-Type"]) == (200, content["attachment"]["contentType"])
    script = program(own_key(priya, [Scope.CASES_READ]).text)
    assert ids(shown(script, "DocumentReference")) == {str(molar.pk)}
    assert ask(script, "ImagingStudy", 403)["issue"][0]["code"] == "forbidden"
    everything = ask(script, f"Patient/{molar.patient_id}/$everything")["entry"]
    assert "ImagingStudy" not in {entry["resource"]["resourceType"] for entry in everything}


def test_the_record_on_paper_is_the_one_it_names(molar: Case, priya: Person, kit: Kit) -> None:
    paper = ask(priya, f"DocumentReference/{molar.pk}")
    answer = client(priya).get(paper["content"][0]["attachment"]["url"].removeprefix(HOST))
    assert answer["Content-Type"] == "application/pdf"
    assert answer["ETag"].strip('"') in paper["description"]
