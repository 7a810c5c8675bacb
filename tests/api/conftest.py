"""Brings the cast to the tests of the API."""

from tests.cast import *  # noqa: F403
