"""Readings, and what those of a canal come to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any, ClassVar

from cases.exports.fhir.codes import MEASURED, METHOD, Codes
from cases.exports.fhir.elements import (
    Annotation,
    CodeableConcept,
    Element,
    Extension,
    Identifier,
    Quantity,
    Reference,
    Resource,
    meta,
    millimetres,
    urn,
)
from cases.exports.fhir.tooth import BODY_SITE, practitioner, site, subject
from cases.models import Canal, Case, JunctionReading, LengthReading
from planning.contract.plan_input import Junction
from planning.foundation.encoding import Mode, decode, encode
from planning.lengths.readings import ApexLocator, ConfirmingImage, DirectSight, Length, LengthState, Reading

# What a reading's own number is, by its kind; what else it has stands beside it.
_APART = frozenset({"method", "interval", "tooth_mm", "set_mm", "read_mm", "seen_mm", "from_terminus_mm"})
_FINAL = (LengthState.SETTLED,)


@dataclass(frozen=True, slots=True, kw_only=True)
class Component(Element):
    code: CodeableConcept
    value_quantity: Quantity | None = None
    value_string: str | None = None
    value_boolean: bool | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Observation(Resource):
    resource_type: ClassVar[str] = "Observation"
    extension: tuple[Extension, ...]
    identifier: tuple[Identifier, ...]
    status: str
    code: CodeableConcept
    subject: Reference
    effective_date_time: datetime
    issued: datetime
    performer: tuple[Reference, ...] = ()
    value_quantity: Quantity
    note: tuple[Annotation, ...] = ()
    body_site: CodeableConcept
    method: CodeableConcept | None = None
    device: Reference | None = None
    derived_from: tuple[Reference, ...] = ()
    component: tuple[Component, ...]


def reading(row: LengthReading, canal: Canal, case: Case, codes: Codes, image: str | None) -> Observation:
    """One reading; `image` is the id of the stored one that its marks are on. A struck one is entered in error."""
    value: Reading = decode(Reading, row.payload, Mode.KEPT)
    images = () if image is None else (Reference(reference=f"DocumentReference/{image}"),)
    locator = Reference(type="Device", display="Electronic apex locator") if isinstance(value, ApexLocator) else None
    return _read(row, canal, case, codes, "length-reading", _own_mm(value), value, device=locator, derived_from=images)


def junction(row: JunctionReading, canal: Canal, case: Case, codes: Codes) -> Observation:
    value = decode(Junction, row.payload, Mode.KEPT)
    return _read(row, canal, case, codes, "junction", value.from_terminus_mm, value)


def working_length(length: Length, canal: Canal, case: Case, codes: Codes) -> Iterator[Observation]:
    """What the readings come to, final once they agree; nothing where they come to no length."""
    rows = [row for row in canal.readings.all() if row.struck_at is None]
    if length.working_length_mm is None or not rows:
        return
    at = max(row.struck_at or row.at for row in canal.readings.all())
    components = [Component(code=codes.own(MEASURED, "reference-point"), value_string=canal.reference_point)]
    if length.stop_mm is not None:
        components.append(Component(code=codes.own(MEASURED, "stop-mm"), value_quantity=millimetres(length.stop_mm)))
    yield Observation(
        id=f"{canal.pk}-working-length",
        meta=meta(at),
        extension=site(BODY_SITE, canal.pk),
        identifier=(Identifier(system=urn(canal.pk).value, value="working-length"),),
        status="final" if length.state in _FINAL else "preliminary",
        code=codes.own(MEASURED, "working-length"),
        subject=subject(case),
        effective_date_time=at,
        issued=at,
        value_quantity=millimetres(length.working_length_mm),
        note=(Annotation(text=length.what_to_do),) if length.what_to_do else (),
        body_site=codes.tooth(case.tooth.iso),
        derived_from=tuple(Reference(reference=f"Observation/{row.pk}") for row in rows),
        component=tuple(each for each in components if each.value_string != ""),
    )


def _read(
    row: LengthReading | JunctionReading,
    canal: Canal,
    case: Case,
    codes: Codes,
    code: str,
    own_mm: float,
    value: Reading | Junction,
    **more: Any,
) -> Observation:
    return Observation(
        id=str(row.pk),
        meta=meta(row.struck_at or row.at),
        extension=site(BODY_SITE, canal.pk),
        identifier=(urn(row.pk),),
        status="final" if row.struck_at is None else "entered-in-error",
        code=codes.own(MEASURED, code),
        subject=subject(case),
        effective_date_time=row.at,
        issued=row.at,
        performer=(practitioner(row.actor),),
        value_quantity=millimetres(own_mm),
        body_site=codes.tooth(case.tooth.iso),
        method=codes.own(METHOD, row.method),
        component=tuple(_components(value, codes)),
        **more,
    )


def _own_mm(value: Reading) -> float:
    match value:
        case ConfirmingImage(set_mm=own_mm) | ApexLocator(read_mm=own_mm) | DirectSight(seen_mm=own_mm):
            return own_mm
        case _:
            return value.tooth_mm


def _components(value: Reading | Junction, codes: Codes) -> Iterator[Component]:
    """What else a reading says, each under its own name."""
    for name, part in encode(value).items():
        if name in _APART or part is None or part == "":
            continue
        code = codes.own(MEASURED, name.replace("_", "-"))
        if isinstance(part, bool):
            yield Component(code=code, value_boolean=part)
        elif isinstance(part, str):
            yield Component(code=code, value_string=part)
        else:
            yield Component(code=code, value_quantity=millimetres(part))
