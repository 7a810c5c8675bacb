"""Lanes: which requests have workers of their own, how many, and how long anybody waits for one."""

from __future__ import annotations

import os
import re
from dataclasses import dataclass

# A body that is no image: Django's own bound (DATA_UPLOAD_MAX_MEMORY_SIZE) is the same.
MOST_BODY_BYTES = 1_000_000
# An image, and what a form puts around it.
MOST_IMAGE_BODY_BYTES = 32_100_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Lane:
    """Requests that share workers."""

    name: str
    at_once: int
    """Workers: how many requests are worked on at a time."""
    apart: bool = False
    """Its workers are processes of their own that give way to everything else on the machine, else threads."""
    most_waiting: int = 256
    wait_s: float = 10.0
    """Whoever gets no worker in this time is told to come back."""
    answer_s: float = 60.0
    """A process that has not answered by then is ended. A backstop: work is bounded where it is asked for."""
    most_body_bytes: int = MOST_BODY_BYTES
    body_s: float = 60.0
    """A body that is not there by then is given up."""
    signed_in: bool = False
    """Whoever is answered here is signed in, or was told that they are not (401)."""
    waits: bool = False
    """Whoever asks here may wait for something new."""


def _count(name: str, usual: int) -> int:
    setting = os.environ.get(name, "")
    return max(1, int(setting)) if setting.isascii() and setting.isdecimal() else usual


HEALTH = Lane(name="health", at_once=1)
# The phone itself waits twenty seconds for an answer: whoever would get none by then may as well wait on.
READS = Lane(name="reads", at_once=8, wait_s=20)
EVENTS = Lane(name="events", at_once=4, wait_s=20)
FILES = Lane(name="files", at_once=3, wait_s=20)
# Other systems copy what changed by the thousand: the phones' reads have threads of their own.
CHANGES = Lane(name="changes", at_once=2, wait_s=20, waits=True)
# Made once, and from then on read.
DESCRIPTION = Lane(name="description", at_once=1, apart=True, most_waiting=64, wait_s=30)
# A page of ten thousand rows takes seconds of computing, and a whole export has hundreds of pages.
EXPORTS = Lane(name="exports", at_once=1, apart=True, most_waiting=32, wait_s=30, signed_in=True)
# Computing takes its time after the waiting, within the phone's twenty seconds.
COMPUTING = Lane(
    name="computing",
    at_once=_count("COMPUTING_AT_ONCE", 2),
    apart=True,
    most_waiting=32,
    wait_s=8,
    signed_in=True,
)
# An image is read in a process of its own in turn, for IMAGE_READ_SECONDS at most; a phone sends it in half megabytes.
IMAGES = Lane(
    name="images",
    at_once=_count("IMAGES_AT_ONCE", 2),
    apart=True,
    most_waiting=64,
    most_body_bytes=MOST_IMAGE_BODY_BYTES,
    body_s=300,
    signed_in=True,
)
# A class signs in at the beginning of a lesson, and hashing a password takes a third of a second by design.
SIGN_IN = Lane(name="sign-in", at_once=_count("SIGN_INS_AT_ONCE", 1), apart=True, most_waiting=64, wait_s=15)
# A launch waits for its platform's keys, and holds up nobody but other launches. A class comes from one address.
LAUNCHES = Lane(name="launches", at_once=4, wait_s=20)
LANES = (HEALTH, READS, EVENTS, FILES, CHANGES, EXPORTS, DESCRIPTION, COMPUTING, IMAGES, SIGN_IN, LAUNCHES)

_CASE = "/api/v1/cases/[^/]+"
# The first that fits. What is not named here is a read or a small change.
_RULES: tuple[tuple[str, str, Lane], ...] = (
    ("GET", "/livez|/readyz", HEALTH),
    (
        "POST",
        "/api/v1/(session|join/new-account|one-time-code|keys|programmes/[^/]+/(service-keys|clients|lti-platforms))"
        "|/oauth/.*|/admin/.*",
        SIGN_IN,
    ),
    ("PUT", "/api/v1/programmes/[^/]+/lti-platforms/[^/]+", SIGN_IN),
    ("GET|POST", "/lti/.*", LAUNCHES),
    ("POST", f"{_CASE}/events|{_CASE}/on-site-sign-offs", EVENTS),
    ("POST", "/api/v1/compute/tooth", READS),
    ("POST", f"/api/v1/compute/.*|{_CASE}/preview|{_CASE}/plan-versions", COMPUTING),
    ("POST", "/api/v1/(programmes/[^/]+/practice-exercises|practice-exercises/.*)", COMPUTING),
    ("GET", "/api/v1/programmes/[^/]+/changes", CHANGES),
    ("GET", r"/api/v1/programmes/[^/]+/export/.*", EXPORTS),
    ("GET", "/api/v1/schema", DESCRIPTION),
    ("GET", "/api/fhir/R4/(metadata|CodeSystem.*)", READS),
    ("GET", "/api/fhir/.*", COMPUTING),
    ("GET", rf"{_CASE}/(bands|(record|course)\.pdf)|/api/v1/plan-versions/[^/]+/work-sheet\.pdf", COMPUTING),
    ("GET", f"{_CASE}/images/[^/]+/[^/]+", FILES),
    ("POST|PUT|PATCH", f"{_CASE}/images(/[^/]+)?", IMAGES),
)
_OF_CASE = re.compile(_CASE)
_COMPILED = tuple((methods.split("|"), re.compile(pattern), lane) for methods, pattern, lane in _RULES)


def lane_of(method: str, path: str) -> Lane:
    """The lane of a request; `path` as the application will see it."""
    asked = "GET" if method == "HEAD" else method
    return next((lane for methods, rule, lane in _COMPILED if asked in methods and rule.fullmatch(path)), READS)


def case_of(path: str) -> str:
    """What the paths of one case begin with; empty where a path is of no case."""
    of_case = _OF_CASE.match(path)
    return of_case[0] if of_case else ""
