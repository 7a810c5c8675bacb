"""What a person is in a programme."""

from __future__ import annotations

from enum import StrEnum


class Role(StrEnum):
    """What a person is in a programme."""

    STUDENT = "student"
    SUPERVISOR = "supervisor"
    COORDINATOR = "coordinator"
