"""Brings the cast to the tests of the records."""

from tests.at_once import database_of_many
from tests.cast import *  # noqa: F403

__all__ = ["database_of_many"]
