"""What a person is in a programme."""

from __future__ import annotations

from enum import StrEnum


class Role(StrEnum):
    STUDENT = "student"
    SUPERVISOR = "supervisor"
    COORDINATOR = "coordinator"
