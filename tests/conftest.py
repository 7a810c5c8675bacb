"""What every test starts from."""

from __future__ import annotations

import os

from hypothesis import HealthCheck, settings

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")

from django.conf import settings as django_settings

# Times of a shared machine prove nothing about a property; the gate draws the same examples on every run.
settings.register_profile("here", deadline=None)
settings.register_profile(
    "gate", deadline=None, derandomize=True, database=None, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("gate" if os.environ.get("CI") else "here")

# The real hashers are slow on purpose, and no test is about them.
django_settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
# Images of tests stay in memory.
django_settings.STORAGES["images"] = {"BACKEND": "django.core.files.storage.InMemoryStorage"}
