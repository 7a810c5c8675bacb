"""The server's settings, but that a platform of courses may be on this machine."""

from __future__ import annotations

from frontend.server.settings import *  # noqa: F403

LTI_HTTP_HERE = True
