"""A client of OAuth 2 for a programme, for whoever runs the server."""

from __future__ import annotations

from typing import Any

from django.core.management import CommandParser
from django.core.management.base import BaseCommand, CommandError

from cases.domain.access.client_kinds import ActsFor, ClientType
from cases.domain.access.scopes import Scope
from cases.domain.errors import CaseError
from cases.management.keepers import keeper_of
from cases.services.people import clients
from cases.services.people.clients import NewClient


class Command(BaseCommand):
    """Prints the client's id, and under it its secret where it has one, this once."""

    help = "Register a client of OAuth 2 for the programme that a coordinator keeps, and print its id and secret."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("name", help="of the service whose client it is")
        parser.add_argument("--by", required=True, help="user name of the programme's coordinator")
        parser.add_argument("--programme", help="its name, where the coordinator keeps several")
        parser.add_argument("--acts-for", type=ActsFor, choices=list(ActsFor), required=True)
        parser.add_argument("--public", action="store_true", help="it runs on people's own devices and has no secret")
        parser.add_argument("--scopes", nargs="+", type=Scope, choices=list(Scope), required=True)
        parser.add_argument("--redirect", nargs="+", default=[], help="where people are sent back to")

    def handle(self, *args: Any, name: str, by: str, scopes: list[Scope], **options: Any) -> None:
        keeper = keeper_of(by, options["programme"])
        new = NewClient(
            name=name,
            acts_for=options["acts_for"],
            client_type=ClientType.PUBLIC if options["public"] else ClientType.CONFIDENTIAL,
            scopes=scopes,
            redirect_uris=options["redirect"],
        )
        try:
            made = clients.grant(actor=keeper.person, programme_id=keeper.programme_id, new=new)
        except CaseError as refusal:
            raise CommandError(str(refusal)) from refusal
        self.stdout.write(made.row.client_id)
        if made.secret:
            self.stdout.write(made.secret)
