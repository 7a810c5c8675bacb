"""Refuses a start that is not safe, and lists everything that is missing at once."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from django.conf import settings
from django.core.checks import CheckMessage, Error, register

from frontend.server.env import Environment


class NotReady(Exception):
    """The process must not serve; the sentence lists everything that is missing."""


def refuse_unready(environment: Environment) -> None:
    """Raises NotReady with the whole list of what stands against serving."""
    missing = environment.missing()
    if missing:
        raise NotReady("This server does not start:\n" + "\n".join(f"- {sentence}" for sentence in missing))


@register("environment")
def check_environment(app_configs: Sequence[Any] | None, **kwargs: Any) -> list[CheckMessage]:
    """The same list for `manage.py check`."""
    environment: Environment = settings.ENVIRONMENT
    return [
        Error(sentence, id=f"environment.E{number:03d}")
        for number, sentence in enumerate(environment.missing(), start=1)
    ]
