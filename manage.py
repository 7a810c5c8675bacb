#!/usr/bin/env python3
"""Administrative commands. Makes the project's own environment first where it is missing."""

import os
import sys

from frontend.server import build, environment


def main() -> None:
    # The app is built while the packages of the server are installed.
    begin = build.begin if sys.argv[1:2] in (["demo"], ["serve"]) else lambda: None
    environment.ensure("run", *environment.extras(), meanwhile=begin)
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")
    from django.core.management import execute_from_command_line

    execute_from_command_line(sys.argv)


if __name__ == "__main__":
    main()
