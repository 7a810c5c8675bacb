"""The server alone, for others than oneself."""

from __future__ import annotations

import os
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError

from frontend.server import build, kernel, serve
from frontend.server.checks import NotReady, refuse_unready
from frontend.server.environment import ROOT
from frontend.server.serve import CannotServe


class Command(BaseCommand):
    """Becomes the server, so that whoever started it ends it in order."""

    help = "Start the server on 127.0.0.1:8000 (PORT and HOST change that); `migrate` comes before it."

    def handle(self, *args: Any, **options: Any) -> None:
        try:
            refuse_unready(settings.ENVIRONMENT)
            address = serve.asked()
            address.refuse_taken()
        except (NotReady, CannotServe) as refusal:
            raise CommandError(str(refusal)) from refusal
        if not (build.DIST / "index.html").exists():
            build.build()
        self.stderr.write(kernel.prepare(), lambda sentence: sentence)
        os.chdir(ROOT)
        command = serve.command(address)
        os.execv(command[0], command)  # noqa: S606 - our own interpreter, no shell
