"""A client for Python, for whoever writes another system."""

from __future__ import annotations

from importlib.util import find_spec
from pathlib import Path
from typing import Any

from django.core.management import CommandParser
from django.core.management.base import BaseCommand, CommandError

from cases.api import client_package
from cases.api.client_package import NotMade


class Command(BaseCommand):
    help = "Make a Python client of this version's API: a wheel that pip installs."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("folder", nargs="?", type=Path, default=Path(), help="where the wheel is put (here)")

    def handle(self, *args: Any, folder: Path, **options: Any) -> None:
        if find_spec("openapi_python_client") is None:
            raise CommandError("This needs more packages: EXTRAS=client python3 manage.py api_client.")
        folder.mkdir(parents=True, exist_ok=True)
        try:
            wheel = client_package.make(folder)
        except NotMade as fault:
            raise CommandError(str(fault)) from fault
        self.stdout.write(str(wheel))
