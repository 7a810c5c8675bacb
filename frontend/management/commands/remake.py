"""Makes anew whatever is kept beside the sources that it is made of."""

from __future__ import annotations

import os
import subprocess
from typing import Any

from django.core.management import call_command
from django.core.management.base import BaseCommand

from frontend.server import build, node
from frontend.server.env import ROOT

DESCRIPTION = ROOT / "tests" / "architecture" / "openapi.yaml"


class Command(BaseCommand):
    help = "Makes anew the table of cautions, the phone's bounds, the API's description and the phone's types of it."

    def handle(self, *args: Any, **options: Any) -> None:
        call_command("caution_table")
        call_command("phone_bounds")
        call_command("spectacular", file=str(DESCRIPTION), validate=True, fail_on_warn=True)
        path = os.environ | {"PATH": node.search_path()}
        subprocess.run(["npm", "run", "--silent", "api-types"], cwd=build.FRONTEND, env=path, check=True)
