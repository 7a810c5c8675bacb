"""The server's entry. Refuses to start when something that a safe start needs is missing."""

from __future__ import annotations

import os
from typing import get_args

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "frontend.server.settings")

from django.conf import settings
from django.urls import get_resolver

from cases.domain.events.payloads import EventPayload
from cases.domain.progress.kept import KeptFold
from cases.domain.progress.summary import CaseSummary
from frontend.server.checks import refuse_unready
from planning.contract.plan_value import Plan
from planning.foundation.encoding import Mode, prepare_reading, prepare_writing

refuse_unready(settings.ENVIRONMENT)
application = get_wsgi_application()
# Every address with its views is loaded before anybody asks: the first ones would all wait for it.
get_resolver().url_patterns  # noqa: B018 - reading it loads them
# And so is what reading plans and events takes.
for kept, mode in ((Plan, Mode.KEPT), (EventPayload, Mode.KEPT), (KeptFold, Mode.ANSWERED)):
    prepare_reading(kept, mode)
for kept in (*get_args(EventPayload), CaseSummary, KeptFold):
    prepare_writing(kept)
