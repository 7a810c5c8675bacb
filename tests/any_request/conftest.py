"""Brings the cast to the requests that are drawn, what they are about, and who asks."""

from tests.any_request.askers import *  # noqa: F403
from tests.any_request.things import *  # noqa: F403
from tests.cast import *  # noqa: F403
