"""What can be wrong with data that came from outside: each kind of fault has one code and one sentence, whoever finds
it."""

from __future__ import annotations

SENTENCES = {
    "control-characters": "Must not hold control characters.",
    "missing": "Fill this in.",
    "not-a-list": "Must be a list.",
    "not-a-number": "Must be a number.",
    "not-an-object": "Must be an object.",
    "not-of-these": "Must be {expected}.",
    "not-text": "Must be text.",
    "not-true-or-false": "Must be true or false.",
    "not-whole": "Must be a whole number.",
    "too-large": "Must be a finite number of at most {most}.",
    "too-long": "At most {max_length} characters.",
    "twice": "Is there twice.",
    "too-many": "At most {max_length} of them.",
    "unknown-key": "Is not known here.",
}


def sentence_of(code: str, **more: object) -> str:
    return SENTENCES[code].format_map(more)
