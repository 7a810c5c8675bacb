#!/usr/bin/env python3
"""Administrative commands. Makes the project's own environment first where it is missing."""

import os
import sys

from frontend.server import environment


def main() -> None:
    environment.ensure("s3" if os.environ.get("IMAGE_BUCKET") else "run")
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")
    from django.core.management import execute_from_command_line

    execute_from_command_line(sys.argv)


if __name__ == "__main__":
    main()
