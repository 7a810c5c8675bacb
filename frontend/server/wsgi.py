"""The server's entry. Refuses to start when something that a safe start needs is missing."""

from __future__ import annotations

import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")

from django.conf import settings

from frontend.server.checks import refuse_unready

refuse_unready(settings.ENVIRONMENT)
application = get_wsgi_application()
