"""A key for a service of a programme, for whoever runs the server."""

from __future__ import annotations

from typing import Any

from django.core.management import CommandParser
from django.core.management.base import BaseCommand, CommandError

from cases.domain.access.key_text import MOST_DAYS
from cases.domain.access.scopes import FOR_SERVICES, Scope
from cases.domain.errors import CaseError
from cases.management.keepers import keeper_of
from cases.services.people import access_keys


class Command(BaseCommand):
    """Prints the key's text alone, this once: `KEY=$(python3 manage.py service_key …)`."""

    help = "Make a key for a service of the programme that a coordinator keeps, and print it."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("name", help="of the service; a second key of the same name is the same service's")
        parser.add_argument("--by", required=True, help="user name of the programme's coordinator")
        parser.add_argument("--programme", help="its name, where the coordinator keeps several")
        parser.add_argument("--scopes", nargs="+", type=Scope, choices=FOR_SERVICES, required=True)
        parser.add_argument("--days", type=int, required=True, help=f"it ends after so many, at most {MOST_DAYS}")

    def handle(self, *args: Any, name: str, by: str, scopes: list[Scope], days: int, **options: Any) -> None:
        keeper = keeper_of(by, options["programme"])
        try:
            made = access_keys.grant(
                actor=keeper.person, programme_id=keeper.programme_id, name=name, scopes=scopes, days=days
            )
        except CaseError as refusal:
            raise CommandError(str(refusal)) from refusal
        self.stdout.write(made.text)
