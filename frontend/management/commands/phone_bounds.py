"""Writes what may be entered of each quantity where the app reads it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, get_args

from django.core.management.base import BaseCommand

from planning.contract.plan_input import CanalInput, Junction, WallInput
from planning.foundation.bounds import for_the_phone
from planning.lengths.readings import Reading

BOUNDS = Path(__file__).parents[2] / "src" / "parts" / "bounds.json"
TYPES = (CanalInput, WallInput, Junction, *get_args(Reading))


def text() -> str:
    return json.dumps(for_the_phone(*TYPES), indent=2, ensure_ascii=False) + "\n"


class Command(BaseCommand):
    help = "Writes the bounds of what may be entered into frontend/src/parts/bounds.json."

    def handle(self, *args: Any, **options: Any) -> None:
        BOUNDS.write_text(text(), encoding="utf-8")
