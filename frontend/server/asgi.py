"""The server's entry: requests come in here, and Django (wsgi.py) answers them in lanes. Refuses the same starts."""

from __future__ import annotations

import os
from typing import Any

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")

from django.conf import settings
from granian.utils.proxies import wrap_asgi_with_proxy_headers

from frontend.server import wsgi
from frontend.server.front.door import Door
from frontend.server.front.request_ids import NamedRequests
from frontend.server.warm import warm


def trusting(door: Door, proxies: list[str]) -> Any:
    """The door, told true addresses by these proxies alone; without any, who connects is who asks."""
    return wrap_asgi_with_proxy_headers(door, proxies) if proxies else door


# The processes of this server read the environment again, and a key that is made up is another one each time.
os.environ.setdefault("SECRET_KEY", settings.SECRET_KEY)
application = NamedRequests(trusting(Door(wsgi.application, warm=warm), settings.ENVIRONMENT.trusted_proxies))
