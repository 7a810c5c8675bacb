"""The parts that FHIR's resources are made of, as far as they are sent here, and how any of them becomes JSON."""

from __future__ import annotations

import re
from dataclasses import dataclass, fields, is_dataclass
from datetime import UTC, datetime
from typing import Any, ClassVar

UUID_URN, URI = "urn:uuid:", "urn:ietf:rfc:3986"
UCUM = "http://unitsofmeasure.org"
_AFTER_UNDERSCORE = re.compile(r"_([a-z])")


class Element:
    """A part of a resource. A field is called as FHIR calls it, in the manner of this code: `value_quantity`."""

    __slots__ = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Coding(Element):
    system: str
    code: str
    display: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CodeableConcept(Element):
    coding: tuple[Coding, ...] = ()
    text: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Identifier(Element):
    system: str
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Reference(Element):
    reference: str | None = None
    type: str | None = None
    identifier: Identifier | None = None
    display: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Quantity(Element):
    value: float
    unit: str
    code: str
    system: str = UCUM


@dataclass(frozen=True, slots=True, kw_only=True)
class Period(Element):
    start: datetime
    end: datetime | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Annotation(Element):
    text: str
    time: datetime | None = None
    author_string: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Attachment(Element):
    content_type: str
    url: str
    title: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Extension(Element):
    url: str
    value_reference: Reference


@dataclass(frozen=True, slots=True, kw_only=True)
class Meta(Element):
    last_updated: datetime | None = None
    tag: tuple[Coding, ...] = ()


TEST_DATA = Coding(
    system="http://terminology.hl7.org/CodeSystem/v3-ActReason", code="HTEST", display="test health data"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Resource(Element):
    """What has an address of its own. All of it is marked as test data: there is no real patient here."""

    resource_type: ClassVar[str]
    id: str
    meta: Meta


def meta(at: datetime) -> Meta:
    """Of a resource that last changed then."""
    return Meta(last_updated=at, tag=(TEST_DATA,))


def urn(id_: object) -> Identifier:
    """What has this UUID, by its URN (RFC 9562)."""
    return Identifier(system=URI, value=f"{UUID_URN}{id_}")


def hash_name(hash_: str) -> Identifier:
    """What has this SHA-256, by its name (RFC 6920, 7: `nih`)."""
    return Identifier(system=URI, value=f"nih:sha-256;{hash_}")


def millimetres(value: float) -> Quantity:
    return Quantity(value=value, unit="mm", code="mm")


def as_json(value: Any) -> Any:
    """JSON data of an element, without what it does not have: FHIR knows neither null nor an empty list."""
    if is_dataclass(value):
        named = {"resourceType": value.resource_type} if isinstance(value, Resource) else {}
        parts = ((_camel_case(field.name), as_json(getattr(value, field.name))) for field in fields(value))
        return named | {name: part for name, part in parts if part not in (None, [], {})}
    if isinstance(value, tuple | list):
        return [as_json(each) for each in value]
    if isinstance(value, datetime):
        # A usual reader of FHIR takes a longer fraction for so many milliseconds, and orders times wrongly.
        return value.astimezone(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")
    return value


def _camel_case(name: str) -> str:
    # `for_`: a word of the language.
    return _AFTER_UNDERSCORE.sub(lambda part: part[1].upper(), name.removesuffix("_"))
