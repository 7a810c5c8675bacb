"""Brings the cast to the tests of the API."""

from tests.cast import (  # noqa: F401
    amari,
    approved,
    asked,
    clinic,
    elsewhere,
    few_samples,
    images_read_once,
    kit,
    molar,
    opened,
    priya,
    programme,
    proposed,
    rosa,
    stranger,
    submitted,
    tom,
    vale,
)
