"""The types of resources that can be read, in one table: addresses, searches and the capability statement follow it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from cases.api.fhir.case import CaseRead
from cases.exports.fhir.elements import Resource

PAGE = ("_count", "_after", "_format")
EVERYTHING, EVERYTHING_PARAMETERS = "everything", ("_since", "_type")


@dataclass(frozen=True, slots=True, kw_only=True)
class Parameter:
    """By what a type is searched."""

    kind: str
    """FHIR's type of a parameter."""
    says: str
    reads: str = ""
    """The element that a reference is compared with."""


_ID = Parameter(kind="token", says="One id, or several with commas between.")
_IDENTIFIER = Parameter(kind="token", says="The value, or its system, a bar and the value.")
_UPDATED = Parameter(
    kind="date", says="With eq, ne, gt, lt, ge, le, sa or eb before it, and more than once: then all of them hold."
)


def _reference(element: str, says: str) -> Parameter:
    return Parameter(kind="reference", says=says, reads=element)


@dataclass(frozen=True, slots=True, kw_only=True)
class Type:
    """One type of resource."""

    name: str
    says: str
    of_case: Callable[[CaseRead], Iterator[Resource]]
    references: Mapping[str, Parameter]
    has_identifier: bool = True

    @property
    def parameters(self) -> Mapping[str, Parameter]:
        named = {"identifier": _IDENTIFIER} if self.has_identifier else {}
        return {"_id": _ID, "_lastUpdated": _UPDATED, **named, **self.references}

    def stated(self) -> dict[str, Any]:
        """What the capability statement says of it."""
        operation = {
            "name": EVERYTHING,
            "definition": f"http://hl7.org/fhir/OperationDefinition/{self.name}-{EVERYTHING}",
            "documentation": "All at once, by `_type` and `_since` less of it; what a part refers to may be outside.",
        }
        return _stated(self.name, self.says, self.parameters) | ({"operation": [operation]} if self.is_patient else {})

    @property
    def is_patient(self) -> bool:
        return self.name == "Patient"


def _stated(name: str, says: str, parameters: Mapping[str, Parameter]) -> dict[str, Any]:
    return {
        "type": name,
        "documentation": says,
        "interaction": [{"code": "read"}, {"code": "search-type"}],
        "versioning": "no-version",
        "readHistory": False,
        "updateCreate": False,
        "conditionalCreate": False,
        "conditionalRead": "not-match",
        "conditionalUpdate": False,
        "conditionalDelete": "not-supported",
        "searchParam": [
            {"name": name, "type": parameter.kind, "documentation": parameter.says}
            for name, parameter in parameters.items()
        ],
    }


def _of_patient(element: str = "subject", *also: str) -> dict[str, Parameter]:
    says = "The patient, by id or as a reference."
    return {name: _reference(element, says) for name in ("patient", *also)}


CODE_SYSTEM = "CodeSystem"
CODE_SYSTEM_PARAMETERS = {"_id": _ID, "url": Parameter(kind="uri", says="The system's own address, whole.")}
TYPES: Mapping[str, Type] = {
    each.name: each
    for each in (
        Type(
            name="Patient",
            says="An alias of a programme; there is no real identity. `name.use` is anonymous, all is tagged HTEST.",
            of_case=CaseRead.patients,
            references={},
        ),
        Type(
            name="BodyStructure",
            says="The tooth of a case, by the case's id, and each of its canals. A service finds a case by the key "
            "that it gave it, under `urn:uuid:` and the service's id.",
            of_case=CaseRead.body_structures,
            references=_of_patient("patient"),
        ),
        Type(
            name="Observation",
            says="Each reading of a length and of a junction, as it was taken, and the working length that a canal's "
            "readings come to: final once they agree. A reading that was struck is entered in error.",
            of_case=CaseRead.observations,
            references=_of_patient("subject", "subject"),
        ),
        Type(
            name="CarePlan",
            says="One version of a plan, whose content never changes; its hash is an identifier. Active while its "
            "approval counts, on hold once the case has changed under it.",
            of_case=CaseRead.care_plans,
            references=_of_patient("subject", "subject"),
        ),
        Type(
            name="ServiceRequest",
            says="What a version plans for one phase of one canal: instruments and stops.",
            of_case=CaseRead.service_requests,
            references=_of_patient("subject", "subject")
            | {"based-on": _reference("basedOn", "The version of the plan.")},
        ),
        Type(
            name="Task",
            says="A version of the plan was submitted: requested, completed (that is approved), rejected "
            "(returned) or cancelled.",
            of_case=CaseRead.tasks,
            references=_of_patient("for", "subject") | {"focus": _reference("focus", "The version of the plan.")},
        ),
        Type(
            name="Provenance",
            says="A decision on a version of the plan, or the withdrawal of an approval: who, when, of exactly which.",
            of_case=CaseRead.provenances,
            references={"target": _reference("target", "The version of the plan.")},
            has_identifier=False,
        ),
        Type(
            name="Procedure",
            says="The treatment of the tooth, by the case's id, and each step of it that was done. A step that was "
            "taken back is entered in error.",
            of_case=CaseRead.procedures,
            references=_of_patient("subject", "subject")
            | {
                "based-on": _reference("basedOn", "A version of the plan, or a phase of a canal in it."),
                "part-of": _reference("partOf", "The treatment that a step is of."),
            },
        ),
        Type(
            name="DocumentReference",
            says="The record on paper, by the case's id, and each stored image, for who sees images.",
            of_case=CaseRead.documents,
            references=_of_patient("subject", "subject"),
        ),
        Type(
            name="ImagingStudy",
            says="The DICOM study of a case, by the case's id, where data sets are kept: a series for each, with the "
            "UIDs that stand in it.",
            of_case=CaseRead.imaging_studies,
            references=_of_patient("subject", "subject"),
        ),
    )
}


def stated() -> list[dict[str, Any]]:
    """Every type as the capability statement has it."""
    codes = _stated(CODE_SYSTEM, "Codes of our own, where nobody else has any.", CODE_SYSTEM_PARAMETERS)
    return [*(each.stated() for each in TYPES.values()), codes]
