"""The patient of a case, which is an alias, its tooth and its canals."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import ClassVar

from cases.exports.fhir.codes import Codes
from cases.exports.fhir.elements import CodeableConcept, Element, Extension, Identifier, Reference, Resource, meta, urn
from cases.models import Canal, Case, Person

# HL7's own: R4's Observation and Procedure name a site by code alone.
BODY_SITE = "http://hl7.org/fhir/StructureDefinition/bodySite"
TARGET = "http://hl7.org/fhir/StructureDefinition/procedure-targetBodyStructure"


@dataclass(frozen=True, slots=True, kw_only=True)
class HumanName(Element):
    text: str
    use: str = "anonymous"


@dataclass(frozen=True, slots=True, kw_only=True)
class Patient(Resource):
    resource_type: ClassVar[str] = "Patient"
    identifier: tuple[Identifier, ...]
    name: tuple[HumanName, ...]
    managing_organization: Reference


@dataclass(frozen=True, slots=True, kw_only=True)
class BodyStructure(Resource):
    resource_type: ClassVar[str] = "BodyStructure"
    identifier: tuple[Identifier, ...]
    location: CodeableConcept
    patient: Reference
    location_qualifier: tuple[CodeableConcept, ...] = ()
    description: str


def patient(case: Case, at: datetime) -> Patient:
    """The alias, known as one: FHIR's use for a name that hides an identity is `anonymous`. It is unique in a
    programme, so that its system is the programme.
    """
    alias = Identifier(system=urn(case.programme_id).value, value=case.patient.alias)
    return Patient(
        id=str(case.patient_id),
        meta=meta(at),
        identifier=(urn(case.patient_id), alias),
        name=(HumanName(text=case.patient.alias),),
        managing_organization=Reference(
            type="Organization", identifier=urn(case.programme_id), display=case.programme.name
        ),
    )


def subject(case: Case) -> Reference:
    return Reference(reference=f"Patient/{case.patient_id}", display=case.patient.alias)


def practitioner(person: Person) -> Reference:
    """Somebody of the programme. They have no resource of their own: who may see people asks the API for them."""
    return person_reference(str(person.pk), str(person))


def person_reference(id_: str, name: str) -> Reference:
    return Reference(type="Practitioner", identifier=urn(id_), display=name)


def tooth(case: Case, codes: Codes, at: datetime, known_as: tuple[Identifier, ...]) -> BodyStructure:
    """The tooth has the id of its case. `known_as` is what the asking system calls the case."""
    return BodyStructure(
        id=str(case.pk),
        meta=meta(at),
        identifier=(urn(case.pk), *known_as),
        location=codes.tooth(case.tooth.iso),
        patient=subject(case),
        description=f"Tooth of a case, {case.setting}",
    )


def canal(row: Canal, case: Case, codes: Codes, at: datetime) -> BodyStructure:
    in_words = f"Canal {row.name}, root {row.root.name}"
    return BodyStructure(
        id=str(row.pk),
        meta=meta(at),
        identifier=(urn(row.pk),),
        location=codes.tooth(case.tooth.iso),
        location_qualifier=(CodeableConcept(text=in_words),),
        patient=subject(case),
        description=in_words if not row.reference_point else f"{in_words}, measured from: {row.reference_point}",
    )


def site(url: str, structure: object) -> tuple[Extension, ...]:
    """Which tooth or canal something is of, by that structure's id."""
    return (Extension(url=url, value_reference=Reference(reference=f"BodyStructure/{structure}")),)
