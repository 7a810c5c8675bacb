"""From an empty server to the first coordinator of a programme, for whoever runs it."""

from __future__ import annotations

from typing import Any

from django.conf import settings
from django.core.management import CommandParser
from django.core.management.base import BaseCommand, CommandError

from cases.domain.access.invited import MOST_DAYS
from cases.domain.errors import CaseError
from cases.services.people import first_coordinator
from frontend.server import serve

DAYS = 3


class Command(BaseCommand):
    """Prints the link alone, this once: `LINK=$(python3 manage.py first_coordinator …)`."""

    help = "Make a programme, and print a link by which its first coordinator chooses names and a password."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("programme", help="its name, as everybody will see it")
        parser.add_argument("--days", type=int, default=DAYS, help=f"the link ends after so many ({DAYS})")
        parser.add_argument("--further", action="store_true", help="beside programmes that there are already")
        parser.add_argument("--address", help="of this server, if it has several: https://name")

    def handle(self, *args: Any, programme: str, days: int, further: bool, **options: Any) -> None:
        if not 1 <= days <= MOST_DAYS:
            raise CommandError(f"A link ends after 1 to {MOST_DAYS} days.")
        try:
            made = first_coordinator.invite(name=programme, days=days, further=further)
        except CaseError as refusal:
            raise CommandError(str(refusal)) from refusal
        address = (options["address"] or usual_address()).rstrip("/")
        self.stdout.write(f"{address}/join#{made.text}")
        self.stderr.write(f"It counts once, until {made.row.ends_at:%Y-%m-%d %H:%M} UTC. Run this again for another.")


def usual_address() -> str:
    """Where people reach this server: by the first of its names, or on this machine."""
    if settings.PRODUCTION:
        return f"https://{settings.ALLOWED_HOSTS[0].lstrip('.')}"
    return serve.asked().url
