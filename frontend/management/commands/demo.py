"""One command from a fresh machine to a running demonstration."""

from __future__ import annotations

import json
import os
import secrets
import shutil
import signal
import subprocess
import tempfile
from contextlib import suppress
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management import CommandParser, call_command
from django.core.management.base import BaseCommand, CommandError
from django.db import connection

from cases.services.demo import cases
from frontend.server import build, kernel, reloading, serve
from frontend.server.env import DATA, LEAST_KEY_LENGTH
from frontend.server.serve import Address, CannotServe

EVERYWHERE = "0.0.0.0"  # noqa: S104 - only when asked for by HOST


class Command(BaseCommand):
    """Brings database, invented programme, front end and server up; prints where, and who may sign in."""

    help = "Start the demonstration on 127.0.0.1:8000 (PORT and HOST change that); keeps its data between starts."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--fresh", action="store_true", help="throw the demonstration's records away first")
        parser.add_argument(
            "--reload", action="store_true", help="for whoever changes the program: load what has changed, both sides"
        )
        parser.add_argument("--json", action="store_true", help="print address and sign-ins as one line of JSON")

    def handle(self, *args: Any, fresh: bool, reload: bool, json: bool, **options: Any) -> None:
        if settings.PRODUCTION:
            raise CommandError("The demonstration has known passwords; it does not start with MODE=production.")
        try:
            address = serve.asked()
            address.refuse_taken()
            signal.signal(signal.SIGTERM, _interrupt)
            if fresh:
                _forget()
            call_command("migrate", verbosity=0)
            cases.load()
            self.stderr.write(kernel.BY_NUMPY if reload else kernel.prepare(), lambda sentence: sentence)
            servers = _started(address, reload=reload)
        except CannotServe as refusal:
            raise CommandError(str(refusal)) from refusal
        try:
            self._announce(address, as_json=json)
            serve.wait(servers)
        except KeyboardInterrupt:
            self.stderr.write("Stopped.")
        finally:
            for server in servers:
                serve.stop(server)

    def _announce(self, address: Address, *, as_json: bool) -> None:
        sign_ins, services = cases.sign_ins(), cases.service_keys()
        if as_json:
            shown = {"url": address.url, "sign_ins": sign_ins, "services": services}
            self.stdout.write(json.dumps(shown, ensure_ascii=False))
        else:
            lines = [
                f"  {who['role']:<12} {who['username']:<12} {who['password']:<24} {who['name']}" for who in sign_ins
            ]
            self.stdout.write(f"\nFourth Canal is at {address.url}\n\nInvented people who may sign in:\n")
            lines += ["", "An invented service, and its key:", ""]
            lines += [f"  {service['name']}\n  {service['key']}" for service in services]
            self.stdout.write("\n".join(lines) + "\n\nCtrl-C ends it. --fresh starts over.")
        self.stdout.flush()


def _started(address: Address, *, reload: bool) -> list[subprocess.Popen[bytes]]:
    variables = {"SECRET_KEY": _kept_key(), "ALLOWED_HOSTS": _hosts(address)}
    if reload:
        build.install_packages(tests=False)
        return reloading.start(address, variables)
    build.build()
    return [serve.start(address, variables)]


def _hosts(address: Address) -> str:
    # Listening to the whole network is asked for by HOST; by which name others come is then theirs.
    return "*" if address.host == EVERYWHERE else f"localhost,127.0.0.1,[::1],{address.host}"


def _forget() -> None:
    """Removes every record: the file of SQLite, the rows of another database; and every image in the folder."""
    folder = settings.STORAGES["images"].get("OPTIONS", {}).get("location")
    if folder:
        shutil.rmtree(folder, ignore_errors=True)
    if connection.vendor != "sqlite":
        call_command("migrate", verbosity=0)
        call_command("flush", interactive=False, verbosity=0)
        return
    connection.close()
    name = str(settings.DATABASES["default"]["NAME"])
    for suffix in ("", "-wal", "-shm"):
        Path(name + suffix).unlink(missing_ok=True)


def _kept_key() -> str:
    """The secret key of this machine's demonstration, made on the first start, so that sign-ins outlive a restart."""
    kept = DATA / "secret-key"
    if not kept.exists():
        kept.parent.mkdir(exist_ok=True)
        # Whole at once: of two that start together one's key is kept, and neither reads half of it.
        with tempfile.NamedTemporaryFile("w", dir=DATA, encoding="utf-8") as made, suppress(FileExistsError):
            made.write(secrets.token_urlsafe(LEAST_KEY_LENGTH))
            made.flush()
            os.link(made.name, kept)
    return kept.read_text(encoding="utf-8")


def _interrupt(number: int, frame: object) -> None:
    raise KeyboardInterrupt
