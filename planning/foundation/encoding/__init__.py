"""Frozen values to JSON and back, in one place.

`decode` reads a value and refuses what it does not understand, all faults at once; `encode` writes it;
`canonical_text` is the one text of a value that is stored and hashed; `kept_text` and `read_back` are a quick pair for
what stays here; `json_schema` describes a type.
The values themselves are plain dataclasses and know nothing of this; pydantic does the work.
"""

from planning.foundation.encoding.decoding import decode, prepare_reading, read_back
from planning.foundation.encoding.faults import SENTENCES, sentence_of
from planning.foundation.encoding.schema import component_name, components, json_schema, kept_schema
from planning.foundation.encoding.shapes import Mode
from planning.foundation.encoding.writing import canonical_text, digest, encode, kept_text, prepare_writing

__all__ = [
    "SENTENCES",
    "Mode",
    "canonical_text",
    "component_name",
    "components",
    "decode",
    "digest",
    "encode",
    "json_schema",
    "kept_schema",
    "kept_text",
    "prepare_reading",
    "prepare_writing",
    "read_back",
    "sentence_of",
]
