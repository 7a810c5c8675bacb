"""Keeps one true answer of each operation for the API's description, from what the tests of the API are answered.

`FOURTH_CANAL_EXAMPLES=1 python3 -m pytest tests/api` writes them where the description reads them, and
`manage.py remake` writes the description; to begin anew, delete the file first. Of several answers that one is kept in
which the least is empty, and of these the shortest; of an operation's refusals those of its own rules (`telling`).
"""

from __future__ import annotations

import fcntl
import json
import os
import re
from typing import Any

from cases.api.recorded import RECORDED

ON = os.environ.get("FOURTH_CANAL_EXAMPLES") == "1"
MOST_ENTRIES = 1  # of a list: one shows what the others are like
# What is another one in every run, each replaced by what tells them apart and nothing else.
PLAIN = (
    (re.compile(r"[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}"), "01930a5e-7c00-7000-8000-{:012x}"),
    (re.compile(r"\b[0-9a-f]{64}\b"), "{:064x}"),
    (re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d+)?(?:Z|[+-]\d\d:\d\d)"), "2026-03-05T09:30:00Z"),
    (re.compile(r"_[0-9a-f]{32}_[0-9a-f]{64}"), "_" + "0" * 32 + "_" + "0" * 64),
    (re.compile(r"(?<=/join#)[\w-]{32}"), "0" * 32),
    (re.compile(r"whsec_[\w+/]{43}="), "whsec_" + "0" * 43 + "="),
    (re.compile(r"\b[A-Z2-7]{32}\b"), "JBSWY3DPEHPK3PXP" * 2),
    (re.compile(r"(?<=cursor=)[^&\"]+"), "cD0yMDI2"),
    (re.compile(r"(?<=\"next\":\")\d+[.-][0-9a-zA-Z._-]+"), "12-0f0f0f0f"),
)

_kept: dict[str, Any] = {}


def keep(operation: str, status: str, content: bytes) -> None:
    """Remembers the answer where it shows more than the one before."""
    value = plain(cut(json.loads(content)))
    key = f"{operation} {status}"
    if key not in _kept or rank(value) < rank(_kept[key]):
        _kept[key] = value


def cut(value: Any) -> Any:
    """The value with the first entries of its lists, and of what is kept by its id."""
    if isinstance(value, list):
        return [cut(each) for each in value[:MOST_ENTRIES]]
    if isinstance(value, dict):
        by_id = value and all(isinstance(each, dict) and each.get("id") == key for key, each in value.items())
        return {key: cut(each) for key, each in list(value.items())[: 2 if by_id else None]}
    return value


def plain(value: Any) -> Any:
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
    for pattern, form in PLAIN:
        seen: dict[str, str] = {}
        text = pattern.sub(lambda match: seen.setdefault(match[0], form.format(len(seen) + 1)), text)  # noqa: B023
    return json.loads(text)


def rank(value: Any) -> tuple[bool, int, int, str]:
    text = json.dumps(value, ensure_ascii=False, sort_keys=True)
    empty = sum(text.count(each) for each in (": null", ": []", ": {}", ': ""'))
    # A sentence can repeat what was sent to do harm.
    return not text.isprintable(), empty, len(text), text


def write() -> None:
    """Adds what was kept to what other processes of the same run have written."""
    with RECORDED.open("a+", encoding="utf-8") as file:
        fcntl.flock(file, fcntl.LOCK_EX)
        file.seek(0)
        every = json.loads(file.read() or "{}")
        for key, value in _kept.items():
            if key not in every or rank(value) < rank(every[key]):
                every[key] = value
        file.truncate(0)
        file.write(json.dumps(dict(sorted(every.items())), indent=1, ensure_ascii=False) + "\n")
