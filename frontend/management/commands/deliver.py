"""Sends what webhooks and platforms of courses are to be told, until it is stopped."""

from __future__ import annotations

import signal
from typing import Any

from django.conf import settings
from django.core.management import CommandParser
from django.core.management.base import BaseCommand, CommandError

from cases.api.v1.webhook_messages import message_of
from cases.services.lti import grades
from cases.services.webhooks.deliver import Sending, Worker
from frontend.server.checks import NotReady, refuse_unready


class Command(BaseCommand):
    """As many as one likes may run at the same time. SIGTERM ends it in order; SIGKILL does no harm."""

    help = "Send to webhooks what has changed, and to platforms their grades, until stopped."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--once", action="store_true", help="send what is due now, and end")

    def handle(self, *args: Any, once: bool, **options: Any) -> None:
        try:
            refuse_unready(settings.ENVIRONMENT)
        except NotReady as refusal:
            raise CommandError(str(refusal)) from refusal
        worker = Worker(message_of, beside=[Sending(grades.due, grades.send)])
        if once:
            worker.run_once()
            return
        for ends in (signal.SIGTERM, signal.SIGINT):
            signal.signal(ends, lambda *_: worker.stopped.set())
        worker.run()
