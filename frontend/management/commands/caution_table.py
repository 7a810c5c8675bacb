"""Writes the table of cautions anew."""

from __future__ import annotations

from typing import Any

from django.core.management.base import BaseCommand

from frontend.server.env import ROOT
from planning.whole_tooth.cautions.table import with_table


class Command(BaseCommand):
    help = "Writes the table of cautions into planning/CAUTIONS.md, from the planner's data."

    def handle(self, *args: Any, **options: Any) -> None:
        page = ROOT / "planning" / "CAUTIONS.md"
        page.write_text(with_table(page.read_text(encoding="utf-8")), encoding="utf-8")
        self.stdout.write(f"{page.name}: the table of cautions is up to date.")
