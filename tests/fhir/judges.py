"""What outside judges say of FHIR R4 resources. None of them sees everything, so they are asked together:

- `fhir` and `rules`: a validator of Node's; HL7's invariants by an engine of FHIRPath, and its required codes;
- `values`: a library of Python's that builds the same resources (of R4B, whose shapes of these types are R4's);
- `schema`: HL7's own JSON Schema of R4;
- `empty`: that nothing is empty, which FHIR forbids and of these no judge sees.
"""

from __future__ import annotations

import json
import os
import subprocess
from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path
from tempfile import NamedTemporaryFile
from typing import Any

from fhir.resources.R4B import get_fhir_model_class
from jsonschema import Draft6Validator  # type: ignore[import-untyped]
from pydantic import ValidationError

FOLDER = Path(__file__).parent
SCHEMA = FOLDER / "node_modules" / "@medplum" / "definitions" / "dist" / "fhir" / "r4" / "fhir.schema.json"
Json = dict[str, Any]
Verdict = dict[str, list[str]]
"""What each judge finds wrong, by its name."""


def verdicts(resources: Sequence[Json]) -> list[Verdict]:
    """One for each resource, in their order; a Bundle's are given beside it to be judged one by one."""
    by_node = _by_node(resources)
    assert len(by_node) == len(resources)
    return [
        {**of_node, "values": _as_values(each), "schema": _by_schema(each), "empty": list(_empty(each, ""))}
        for of_node, each in zip(by_node, resources, strict=True)
    ]


def _by_node(resources: Sequence[Json]) -> list[Verdict]:
    with NamedTemporaryFile("w", encoding="utf-8", suffix=".jsonl") as file:
        file.writelines(f"{json.dumps(each)}\n" for each in resources)
        file.flush()
        command = [os.environ.get("PLAYWRIGHT_NODEJS_PATH", "node"), str(FOLDER / "judges.mjs"), file.name]
        ran = subprocess.run(command, capture_output=True, text=True, check=False, timeout=300)
    assert ran.returncode == 0, ran.stderr
    return [json.loads(line) for line in ran.stdout.splitlines()]


def _as_values(resource: Json) -> list[str]:
    try:
        get_fhir_model_class(resource["resourceType"]).model_validate(resource)
    except ValidationError as error:
        return [f"{each['loc']}: {each['msg']}" for each in error.errors()]
    return []


def _by_schema(resource: Json) -> list[str]:
    entries = resource.get("entry", ())
    # What a Bundle holds is judged by itself: the schema would try every type there is.
    shell = {**resource, "entry": [{**each, "resource": None} for each in entries]} if entries else resource
    for each in shell.get("entry", ()):
        del each["resource"]
    return [
        f"{list(error.path)}: {error.message[:200]}" for error in _schema(resource["resourceType"]).iter_errors(shell)
    ]


@cache
def _schema(type_: str) -> Draft6Validator:
    definitions = json.loads(SCHEMA.read_text(encoding="utf-8"))["definitions"]
    return Draft6Validator({"$ref": f"#/definitions/{type_}", "definitions": definitions})


def _empty(value: Any, at: str) -> Iterator[str]:
    if value is None or value in ("", [], {}):
        yield at
    parts = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for name, part in parts:
        yield from _empty(part, f"{at}/{name}")
