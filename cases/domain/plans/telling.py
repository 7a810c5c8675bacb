"""One difference between two plans' inputs, told for people."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, fields, is_dataclass
from enum import StrEnum
from typing import Any

from cases.domain.plans.differences import ABSENT, KEYS, ORDER, Difference, Step
from planning.foundation import tables
from planning.foundation.bounds import noted
from planning.foundation.facts import Bears, Fact, NotTold
from planning.foundation.quantities import mm


class ChangeKind(StrEnum):
    SETTING = "setting"
    KIT = "kit"
    TECHNIQUE = "technique"
    NEEDLE = "needle"
    IRRIGANT = "irrigant"
    FINAL_RINSE = "final_rinse"
    SERIES_TAPER = "series_taper"
    ISOLATED = "isolated"
    THRESHOLDS = "thresholds"
    LENGTH = "length"
    """The working length before rounding, mm."""
    LENGTH_STATE = "length_state"
    END = "end"
    """Deepest stop of a shaping instrument, mm."""
    JUNCTION = "junction"
    FINAL_SIZE = "final_size"
    REASON = "reason"
    """Why a size outside the advised range was chosen."""
    STOP = "stop"
    """The stop of one instrument, mm."""
    NEEDLE_CEILING = "needle_ceiling"
    FINDING = "finding"
    REFERENCE_POINT = "reference_point"
    WITHHELD = "withheld"
    GIVEN = "given"
    """Anything else that went in: its path says what."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    what: ChangeKind
    before: str | None
    after: str | None
    subject: str = ""
    """What of it, where there are several: an instrument and phase, one of the readings."""
    label: str
    """What it is called, for people."""
    unit: str
    """Of `before` and `after`; empty where there is none."""
    bears_on: Bears
    path: str
    """Where in what the plan is made from, items by their keys; empty for what came out of it."""


WHAT = {
    "PlanInput.setting": ChangeKind.SETTING,
    "PlanInput.technique": ChangeKind.TECHNIQUE,
    "PlanInput.isolated": ChangeKind.ISOLATED,
    "PlanInput.thresholds": ChangeKind.THRESHOLDS,
    "Kit.name": ChangeKind.KIT,
    "Needle.gauge": ChangeKind.NEEDLE,
    "Needle.tip": ChangeKind.NEEDLE,
    "Choices.irrigant": ChangeKind.IRRIGANT,
    "Choices.final_rinse": ChangeKind.FINAL_RINSE,
    "Choices.series_taper": ChangeKind.SERIES_TAPER,
    "CanalChoice.reason": ChangeKind.REASON,
    "CanalInput.finding": ChangeKind.FINDING,
    "CanalInput.reference_point": ChangeKind.REFERENCE_POINT,
}
"""Those that have a name of their own in the API."""

ENCLOSING = frozenset(
    {"PlanInput.choices", "PlanInput.kit", "PlanInput.technique", "CanalInput.progress", "Progress.walked_before"}
)
"""Fields whose parts are understood without naming them."""

UNITS = {"mm": "mm", "um": "mm", "deg": "°", "rpm": "/min", "ncm": "N·cm"}
"""By the end of the field's name, as people write them; thousandths are told in millimetres."""

NAMES: dict[str, Callable[[Any], str]] = {
    "FillingItem": lambda item: f"{item.kind} {item.name}",
    "Instrument": lambda item: item.key,
    "Override": lambda item: item.code,
    "Phase": lambda item: f"phase {item.title}",
    "RootInput": lambda item: f"root {item.name}",
    "Technique": lambda item: item.name,
}
"""What an item is called, by its type; others by their key, or by what they are and their number."""


def told(difference: Difference) -> tuple[str | None, Change | None]:
    """The canal it concerns, None for the tooth, and the change; no change for a field that is rightly not told."""
    steps = difference.steps
    # The innermost field names the change; items of a list have no name of their own.
    of = next(step for step in reversed(steps) if step.holder)
    field = of.field
    canal = next((named for step in steps if (named := _canal_of(step.item)) is not None), None)
    if _not_told(of.holder, of.name) or (field == "PlanInput.canals" and canal is not None):
        return canal, None  # that a canal came or went is told of the canal itself
    fact = _fact(of.holder, of.name)
    before, after = _both(difference, field)
    change = Change(
        what=WHAT.get(field, ChangeKind.GIVEN),
        before=before,
        after=after,
        subject=", ".join(_subject(steps, field)),
        label=f"order of {fact.label}" if steps[-1].name == ORDER else fact.label,
        unit=_unit(difference, field),
        bears_on=fact.bears_on,
        path="".join(f"/{part.replace('~', '~0').replace('/', '~1')}" for part in difference.path),
    )
    return canal, change


def _fact(holder: type | None, name: str) -> Fact:
    """The note on a field. A field without one goes by its name, and counts as dangerous."""
    facts = noted(holder, Fact) if holder else {}
    return facts.get(name) or Fact(name.replace("_", " "), Bears.DEPTH)


def _not_told(holder: type | None, name: str) -> bool:
    return holder is not None and name in noted(holder, NotTold)


def _canal_of(item: object) -> str | None:
    match type(item).__name__:
        case "CanalInput":
            return str(getattr(item, "name", ""))
        case "CanalChoice" | "Override":
            canal: str | None = getattr(item, "canal", None)
            return canal
    return None


def _subject(steps: tuple[Step, ...], field: str) -> Iterator[str]:
    """What encloses the leaf, from the outside inwards, as far as it has to be said."""
    label = ""
    for step, inner in zip(steps, (*steps[1:], None), strict=True):
        if step.holder:
            label = _fact(step.holder, step.name).label
        if step.item is not ABSENT and _canal_of(step.item) is None:
            yield _name(step.item, step.number, label)
        elif not step.holder and step.item is ABSENT and step.name != ORDER:
            yield step.name
        elif step.field not in {"", field, *ENCLOSING} and (inner is None or inner.item is ABSENT):
            yield label


def _name(item: Any, number: int, label: str = "") -> str:
    kind = type(item).__name__
    if kind in NAMES:
        return NAMES[kind](item)
    if kind in KEYS:
        return " ".join(str(getattr(item, name)) for name in KEYS[kind])
    method = getattr(item, "method", "").replace("_", " ")
    return f"{method or label} {number}".strip()


def _both(difference: Difference, field: str) -> tuple[str | None, str | None]:
    before, after = _text(difference.before, field), _text(difference.after, field)
    if field == "PlanInput.thresholds":
        usual = tables.published()[difference.path[-1]].value
        before, after = before or f"{usual:g}", after or f"{usual:g}"
    if before == after:  # what rounding or an empty text hides
        return repr(difference.before), repr(difference.after)
    return before, after


def _unit(difference: Difference, field: str) -> str:
    if field == "PlanInput.thresholds":
        unit = tables.published()[difference.path[-1]].unit
        return "" if unit == "1" else unit
    return UNITS.get(field.rpartition("_")[2], "")


def _text(value: Any, field: str) -> str | None:
    """A value as people read it, without its unit; None for nothing."""
    match value:
        case None | "" | () | {}:
            return None
        case _ if value is ABSENT:
            return None
        # Before the numbers, since True is an int.
        case bool():
            return "yes" if value else "no"
        case int() if field.endswith("taper"):
            return f".{value:02d}"
        case int() if field.endswith("_um"):
            return f"{mm(value):g}"
        case int() | float():
            return f"{value:g}"
        case tuple() if any(map(is_dataclass, value)):
            return ", ".join(_name(item, number) for number, item in enumerate(value, start=1))
        case tuple():
            return ", ".join(_text(item, field) or "none" for item in value)
        case dict():
            return ", ".join(f"{key} {_text(item, field)}" for key, item in value.items())
        case _ if is_dataclass(value):
            return whole(value) or "there"
    return str(value)


def whole(item: Any) -> str:
    """What is said of an item that came or went: all that is not as usual; empty where nothing is."""
    kind = type(item).__name__
    if kind == "Technique":
        return _name(item, 0)
    said = []
    for each in fields(item):
        field = f"{kind}.{each.name}"
        value = getattr(item, each.name)
        many = isinstance(value, dict) or (isinstance(value, tuple) and any(map(is_dataclass, value)))
        text = str(len(value)) if many and value else _text(value, field)
        unsaid = value == each.default or _not_told(type(item), each.name) or each.name in KEYS.get(kind, ())
        if text is not None and not unsaid:
            unit = UNITS.get(field.rpartition("_")[2], "")
            said.append(f"{_fact(type(item), each.name).label} {text}{'' if unit == '°' else ' '}{unit}".rstrip())
    return ", ".join(said)
