"""What schemas and properties are, for the API's description, where the code beside them does not say it."""

from __future__ import annotations

import re
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

TABLE = Path(__file__).with_name("described.toml")


@cache
def words() -> dict[str, dict[str, str]]:
    """By `schemas` and `properties`, and by a schema what its own properties are."""
    return tomllib.loads(TABLE.read_text(encoding="utf-8"))


def base_of(name: str) -> str:
    """The name of a schema without what tells that it is sent, changes something or is kept."""
    return re.sub(r"(Request)?(Kept)?$", "", name.removeprefix("Patched"))


def described(result: dict[str, Any], **_: object) -> dict[str, Any]:
    """The generator's hook. Raises TypeError for what nothing describes."""
    for name, schema in result["components"]["schemas"].items():
        base = base_of(name)
        if not schema.get("description"):
            schema["description"] = _said("schemas", base, name)
        for key, part in schema.get("properties", {}).items():
            if not part.get("description"):
                _describe(part, words().get(base, {}).get(key) or _said("properties", key, name))
    return result


def _said(kind: str, name: str, where: str) -> str:
    if name not in words()[kind]:
        raise TypeError(f"{where}: nothing says what {name!r} is. Say it in the code, or in {TABLE.name}.")
    return words()[kind][name]


def _describe(part: dict[str, Any], text: str) -> None:
    # Beside a reference other keys count too, but not every reader of descriptions knows.
    if "$ref" in part:
        part["allOf"] = [{"$ref": part.pop("$ref")}]
    part["description"] = text
