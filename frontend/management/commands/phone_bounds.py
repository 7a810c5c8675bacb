"""Writes what may be entered of each quantity, and what is charted of a canal or a tooth, where the app reads it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any, get_args

from django.core.management.base import BaseCommand

from planning.contract.canal_facts import FactNumber, fact_numbers
from planning.contract.plan_input import Junction
from planning.contract.tooth_facts import AskedIn, ToothFacts
from planning.foundation.bounds import Bound, bounds, noted, of_fields
from planning.foundation.facts import Fact
from planning.lengths.readings import Reading

BOUNDS = Path(__file__).parents[2] / "src" / "parts" / "bounds.json"


def text() -> str:
    rows = {key: _quantity(bound) for key, bound in sorted(bounds().items()) if bound.step is not None}
    tables = {
        "quantities": rows,
        "facts": dict(map(_fact, fact_numbers())),
        "tooth": dict(_of_tooth()),
        "fields": dict(sorted(_fields())),
    }
    return json.dumps(tables, indent=2, ensure_ascii=False) + "\n"


def _quantity(bound: Bound) -> dict[str, Any]:
    fields = {name: getattr(bound, name) for name in ("least", "most", "step", "begins", "sentence", "whole")}
    return {"unit": bound.unit_said, **{name: value for name, value in fields.items() if value is not None}}


def _fact(number: FactNumber) -> tuple[str, dict[str, Any]]:
    return ".".join(number.path), {"label": number.label, "quantity": number.bound.key, "usual": number.usual}


def _of_tooth() -> Iterator[tuple[str, dict[str, Any]]]:
    """The tooth's facts that are a yes or a no."""
    facts = noted(ToothFacts, Fact)
    for name, asked in noted(ToothFacts, AskedIn).items():
        yield name, {"label": facts[name].label, "settings": asked.settings}


def _fields() -> Iterator[tuple[str, str]]:
    """The rows that bound the fields of readings."""
    for type_ in (Junction, *get_args(Reading)):
        yield from ((f"{type_.__name__}.{name}", bound.key) for name, bound in of_fields(type_).items())


class Command(BaseCommand):
    help = "Writes the bounds of what may be entered into frontend/src/parts/bounds.json."

    def handle(self, *args: Any, **options: Any) -> None:
        BOUNDS.write_text(text(), encoding="utf-8")
