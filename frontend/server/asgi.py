"""The server's entry: requests come in here, and Django (wsgi.py) answers them in lanes. Refuses the same starts."""

from __future__ import annotations

import os

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")

from django.conf import settings
from granian.utils.proxies import wrap_asgi_with_proxy_headers

from frontend.server.front.door import Door
from frontend.server.wsgi import application as answers

# The processes of this server read the environment again, and a key that is made up is another one each time.
os.environ.setdefault("SECRET_KEY", settings.SECRET_KEY)
application = Door(answers)
if settings.ENVIRONMENT.trusted_proxies:
    application = wrap_asgi_with_proxy_headers(application, settings.ENVIRONMENT.trusted_proxies)
