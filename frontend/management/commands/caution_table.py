"""Writes the table of cautions into the developers' guide."""

from __future__ import annotations

from typing import Any

from django.core.management.base import BaseCommand

from frontend.server.env import ROOT
from planning.caution_table import with_table


class Command(BaseCommand):
    help = "Writes the table of cautions into DEVELOPERS.md, from the planner's data."

    def handle(self, *args: Any, **options: Any) -> None:
        guide = ROOT / "DEVELOPERS.md"
        guide.write_text(with_table(guide.read_text(encoding="utf-8")), encoding="utf-8")
        self.stdout.write(f"{guide.name}: the table of cautions is up to date.")
