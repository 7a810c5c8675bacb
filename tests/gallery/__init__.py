"""The gallery of screens. Names of the records are read from the program itself, which needs its settings."""

import os

import django

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")
django.setup()
