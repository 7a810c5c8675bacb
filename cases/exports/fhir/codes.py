"""Codes, and where they are from: of systems that anybody may use, else of our own, which are served at their address.

SNOMED CT's are of the Global Patient Set (CC BY 4.0). Canals have no code anywhere, so they are named by text.
"""

from __future__ import annotations

import csv
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import ClassVar

from cases.exports.fhir.elements import CodeableConcept, Coding, Element, Meta, Resource
from planning import anatomy

ATTRIBUTION = (
    "SNOMED CT codes are of the SNOMED CT Global Patient Set, by SNOMED International, used under CC BY 4.0. Universal "
    "numbers are of HL7 Terminology. Units are UCUM's."
)
SNOMED_CT = "http://snomed.info/sct"
UNIVERSAL = "http://terminology.hl7.org/CodeSystem/ADAUniversalToothDesignationSystem"
ROOT_CANAL_THERAPY = Coding(system=SNOMED_CT, code="54258006", display="Root canal therapy, comprehensive")
_TEETH = Path(__file__).with_name("teeth.csv")


@dataclass(frozen=True, slots=True, kw_only=True)
class Concept(Element):
    code: str
    display: str
    definition: str | None = None


TOOTH, MEASURED, METHOD = "tooth", "measured", "method"
_SYSTEMS: dict[str, tuple[str, tuple[Concept, ...]]] = {
    TOOTH: (
        "Teeth by their designation in ISO 3950",
        tuple(Concept(code=tooth.iso, display=tooth.name) for tooth in anatomy.all_teeth()),
    ),
    MEASURED: (
        "What is measured of a root canal",
        (
            Concept(
                code="length-reading",
                display="Reading of a root canal's length",
                definition="From the canal's reference point. By its method: the tooth on an image, the stop of the "
                "instrument that an image shows, what an electronic locator read, or what was seen at the foramen.",
            ),
            Concept(
                code="working-length",
                display="Working length of a root canal",
                definition="What all readings of the canal come to, from its reference point, before rounding.",
            ),
            Concept(
                code="junction",
                display="Where a root canal joins another",
                definition="Distance from the end that the two canals share.",
            ),
            Concept(code="instrument-mm", display="Length of the instrument on the image"),
            Concept(code="instrument-on-image-mm", display="The instrument as measured on the image"),
            Concept(code="tooth-on-image-mm", display="The tooth as measured on the image"),
            Concept(
                code="tip-short-mm",
                display="How far the tip is short of the radiographic apex",
                definition="Below 0: past it.",
            ),
            Concept(code="repeat-mm", display="The locator's second reading"),
            Concept(code="at-length-mm", display="Length of the joining canal when this was measured"),
            Concept(code="stop-mm", display="The stop: the working length rounded down to half a millimetre"),
            Concept(code="reference-point", display="What is measured from"),
            Concept(code="mark", display="The locator's mark that was read at"),
            Concept(code="stable", display="The locator's display held still"),
            Concept(code="after-flaring", display="Taken after coronal flaring"),
            Concept(code="depth-mm", display="Where the instrument's tip stopped"),
        ),
    ),
    METHOD: (
        "How a root canal was measured",
        (
            Concept(code="pre_operative_image", display="Tooth length on a pre-operative image"),
            Concept(code="ratio", display="By an instrument of known length on the same image"),
            Concept(code="confirming_image", display="Image with an instrument at a known stop"),
            Concept(code="apex_locator", display="Electronic apex locator"),
            Concept(code="direct_sight", display="The tip seen at the end"),
            Concept(code="cone_mark", display="Mark on a cone"),
            Concept(code="two_instruments", display="Two instruments that meet"),
            Concept(code="image_estimate", display="Estimate on an image"),
        ),
    ),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class CodeSystem(Resource):
    """Codes of our own, where nobody else has any that may be used."""

    resource_type: ClassVar[str] = "CodeSystem"
    url: str
    title: str
    concept: tuple[Concept, ...]
    name: str
    copyright: str = ATTRIBUTION
    status: str = "active"
    content: str = "complete"
    experimental: bool = False
    case_sensitive: bool = True


@dataclass(frozen=True, slots=True)
class Codes:
    """Codes as a server says them: those of our own are of systems below its own address, `base`."""

    base: str

    def systems(self) -> list[CodeSystem]:
        """Our own systems, at the addresses by which their codes name them."""
        return [
            CodeSystem(
                id=name,
                meta=Meta(),
                url=f"{self.base}/CodeSystem/{name}",
                name=name.capitalize(),
                title=title,
                concept=concepts,
            )
            for name, (title, concepts) in _SYSTEMS.items()
        ]

    def own(self, system: str, code: str) -> CodeableConcept:
        """A code of our own with its words."""
        concept = next(each for each in _SYSTEMS[system][1] if each.code == code)
        coding = Coding(system=f"{self.base}/CodeSystem/{system}", code=code, display=concept.display)
        return CodeableConcept(coding=(coding,), text=concept.display)

    def tooth(self, iso: str) -> CodeableConcept:
        """A tooth by its ISO 3950 designation: in our own system, in SNOMED CT's, and in the Universal one."""
        tooth = anatomy.tooth(iso)
        codings = (
            Coding(system=f"{self.base}/CodeSystem/{TOOTH}", code=iso, display=tooth.name),
            _snomed_ct()[iso],
            Coding(system=UNIVERSAL, code=tooth.universal),
        )
        return CodeableConcept(coding=codings, text=f"{iso}, {tooth.name}")


@cache
def _snomed_ct() -> dict[str, Coding]:
    lines = _TEETH.read_text(encoding="utf-8").splitlines()
    rows = csv.DictReader(line for line in lines if not line.startswith("#"))
    return {row["iso"]: Coding(system=SNOMED_CT, code=row["code"], display=row["display"]) for row in rows}
