"""The entry for asynchronous servers (wsgi.py is the usual one). Refuses the same starts."""

from __future__ import annotations

import os
import warnings

from django.core.asgi import get_asgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")

from django.conf import settings

from frontend.server.checks import refuse_unready

refuse_unready(settings.ENVIRONMENT)
# Built files are small and read whole; that the file server hands them over synchronously costs nothing here.
warnings.filterwarnings("ignore", message="StreamingHttpResponse must consume synchronous iterators")
application = get_asgi_application()
