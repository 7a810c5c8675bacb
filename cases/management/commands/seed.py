"""Invented people and cases into the present database."""

from __future__ import annotations

from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError, CommandParser

from cases.services.demo import cases, drawn
from cases.services.demo.drawn import COUNTS, PASSWORD, Size


class Command(BaseCommand):
    help = "Load the invented programmes, and as many drawn cases as wanted; what is there already stays as it is."

    def add_arguments(self, parser: CommandParser) -> None:
        sizes = "; ".join(f"{size}: {more} more cases" for size, (_, more) in COUNTS.items())
        parser.add_argument("--size", type=Size, choices=list(Size), default=Size.DEMO, help=sizes)
        parser.add_argument("--seed", type=int, default=1, help="another seed draws other cases, beside the first ones")

    def handle(self, *args: Any, size: Size, seed: int, **options: Any) -> None:
        if settings.PRODUCTION:
            raise CommandError("Invented people have known passwords; they are not loaded with MODE=production.")
        written = cases.load()
        students = drawn.load(size, seed=seed)
        self.stdout.write("The invented programmes are loaded." if written else "The invented programmes were there.")
        if students:
            self.stdout.write(f"{COUNTS[size][1]} drawn cases of {students[0]} to {students[-1]}, password {PASSWORD}")
        elif size is not Size.DEMO:
            self.stdout.write(f"Drawn with seed {seed} before: nothing is added.")
