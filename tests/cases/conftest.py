"""Brings the cast to the tests of the records."""

from tests.cast import *  # noqa: F403
