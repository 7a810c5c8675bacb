"""Techniques from text: those provided in `data/techniques`, and a programme's own."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from functools import cache, lru_cache

from planning.foundation.encoding import decode
from planning.foundation.errors import NotUnderstood, Pointer, TechniqueFileRefused, TechniqueNotUsable
from planning.foundation.tables import DATA
from planning.techniques.rules import faults
from planning.techniques.technique import Technique
from planning.techniques.toml_lines import Lines

MOST_KEPT = 100  # techniques
MOST_CHARACTERS = 60_000  # ten times the longest technique provided
AT_LINE = re.compile(r" \(at (?:line (\d+), column \d+|end of document)\)$")


@cache
def provided_techniques() -> Mapping[str, Technique]:
    """The techniques that come with the planner, by key."""
    files = sorted((DATA / "techniques").glob("*.toml"))
    techniques = [read_technique(path.read_text(encoding="utf-8"), where=path.name) for path in files]
    return {technique.key: technique for technique in techniques}


def read_technique(text: str, *, where: str) -> Technique:
    """A technique from TOML text. Raises TechniqueFileRefused, which names `where`, the lines and what is wrong."""
    if len(text) > MOST_CHARACTERS:
        raise TechniqueFileRefused(where, [(1, (), f"the text is longer than {MOST_CHARACTERS} characters.")])
    try:
        data = tomllib.loads(text)
    except ValueError as wrong:  # no TOML, or a number with thousands of digits
        raise TechniqueFileRefused(where, [_unreadable(str(wrong), text)]) from None
    except RecursionError:
        raise TechniqueFileRefused(where, [(1, (), "it is nested beyond reading.")]) from None
    try:
        technique = decode(Technique, data)
    except NotUnderstood as wrong:
        mistakes = [(at, f"{at[-1]}: {sentence}" if at else sentence) for at, _, sentence in wrong.faults]
        raise _refused(where, text, mistakes) from None
    wrong_phases = list(faults(technique))
    if wrong_phases:
        raise _refused(where, text, wrong_phases)
    return technique


@lru_cache(maxsize=MOST_KEPT)
def refuse_unusable(technique: Technique, *, where: str) -> None:
    """Raises TechniqueNotUsable for the first fault of a technique; its path says where in it."""
    for at, reason in faults(technique):
        raise TechniqueNotUsable(where=where, reason=reason, at=at)


def _unreadable(said: str, text: str) -> tuple[int, Pointer, str]:
    """The fault of a text that is no TOML: its line, read from the message, an empty path and the sentence."""
    match = AT_LINE.search(said)
    line = int(match[1]) if match and match[1] else len(text.splitlines()) or 1
    return line, (), f"not TOML: {AT_LINE.sub('', said)}."


def _refused(where: str, text: str, faults_found: list[tuple[Pointer, str]]) -> TechniqueFileRefused:
    lines = Lines(text)
    return TechniqueFileRefused(where, sorted((lines.of(at), at, says) for at, says in faults_found))
