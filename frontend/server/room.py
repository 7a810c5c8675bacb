"""What a room loads: the program, and what only those who compute would wait for."""

from __future__ import annotations

from frontend.server import wsgi
from frontend.server.warm import warm
from planning.contract.plan_input import PlanInput
from planning.contract.plan_value import Plan
from planning.depth.last_depth import Ahead
from planning.foundation.encoding import prepare_writing
from planning.work.bands import CanalBands

application = wsgi.application
warm(application)
for made in (Plan, PlanInput, CanalBands, Ahead):
    prepare_writing(made)
