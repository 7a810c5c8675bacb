"""Writes what may be entered of each quantity, what is charted of a canal in numbers, and what a form calls the fields
that it asks for, where the app reads it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any, get_args

from django.core.management.base import BaseCommand

from planning.contract.canal_facts import FactNumber, fact_numbers
from planning.contract.plan_input import CanalInput, Choices, Junction, PlanInput, RootInput
from planning.foundation.bounds import Bound, bounds, noted, of_fields
from planning.foundation.facts import Fact
from planning.lengths.readings import ConfirmingImage, Ratio, Reading

SRC = Path(__file__).parents[2] / "src"
BOUNDS = SRC / "parts" / "bounds.json"
LABELS = SRC / "words" / "labels.json"

ASKED: dict[type, tuple[str, ...]] = {
    PlanInput: ("tooth", "setting", "kit", "technique", "anatomy", "isolated", "root_filled", "perforation"),
    RootInput: ("pattern",),
    CanalInput: ("finding", "reference_point"),
    Choices: ("needle", "irrigant", "final_rinse", "series_taper"),
    ConfirmingImage: ("set_mm",),
    Ratio: ("instrument_on_image_mm", "tooth_on_image_mm"),
}
"""What a form calls by its label. The others it asks for in words of its own, which say what to measure, and how."""


def text() -> str:
    rows = {key: _quantity(bound) for key, bound in sorted(bounds().items())}
    tables = {"quantities": rows, "facts": dict(map(_fact, fact_numbers())), "fields": dict(sorted(_fields()))}
    return json.dumps(tables, indent=2, ensure_ascii=False) + "\n"


def labels() -> str:
    called = {f"{type_.__name__}.{name}": noted(type_, Fact)[name].label for type_ in ASKED for name in ASKED[type_]}
    headed = {field: label[0].upper() + label[1:] for field, label in called.items()}
    return json.dumps(headed, indent=2, ensure_ascii=False) + "\n"


def _quantity(bound: Bound) -> dict[str, Any]:
    fields = {name: getattr(bound, name) for name in ("least", "most", "step", "begins", "sentence", "whole")}
    return {"unit": bound.unit_said, **{name: value for name, value in fields.items() if value is not None}}


def _fact(number: FactNumber) -> tuple[str, dict[str, Any]]:
    return ".".join(number.path), {"label": number.label, "quantity": number.bound.key, "usual": number.usual}


def _fields() -> Iterator[tuple[str, str]]:
    """The rows that bound the fields of readings."""
    for type_ in (Junction, *get_args(Reading)):
        yield from ((f"{type_.__name__}.{name}", bound.key) for name, bound in of_fields(type_).items())


class Command(BaseCommand):
    help = "Writes frontend/src/parts/bounds.json and frontend/src/words/labels.json."

    def handle(self, *args: Any, **options: Any) -> None:
        BOUNDS.write_text(text(), encoding="utf-8")
        LABELS.write_text(labels(), encoding="utf-8")
