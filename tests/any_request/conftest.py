"""Brings the cast to the requests that are drawn."""

from tests.cast import *  # noqa: F403
