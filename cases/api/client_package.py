"""A client for Python, made from the API's description and packed as a wheel."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from drf_spectacular.generators import SchemaGenerator

NAME = "fourth_canal_client"
# What the generator would refuse, or name after, and what it is to a client: bytes.
BYTES = (
    "application/pdf",
    "image/jpeg",
    "image/jpeg, image/png",
    "application/dicom",
    "image/*",
    "application/partial-upload",
    "application/x-ndjson",
    "text/csv",
)
SETTINGS = {"content_type_overrides": dict.fromkeys(BYTES, "application/octet-stream"), "post_hooks": []}
PROJECT = """\
[project]
name = "fourth-canal-client"
version = "{version}"
description = "A client of the Fourth Canal API, made from its description."
requires-python = ">=3.11"
dependencies = ["attrs>=23", "httpx>=0.27"]

[build-system]
requires = ["hatchling"]
build-backend = "hatchling.build"
"""


class NotMade(Exception):
    """A tool has failed; what it said is the reason."""


def make(folder: Path) -> Path:
    """The wheel, in this folder. Raises NotMade."""
    description = _for_a_client(SchemaGenerator().get_schema(public=True))
    with TemporaryDirectory() as name:
        work = Path(name)
        (work / "description.json").write_text(json.dumps(description), encoding="utf-8")
        (work / "settings.json").write_text(json.dumps(SETTINGS), encoding="utf-8")
        package = work / "package"
        package.mkdir()
        (package / "pyproject.toml").write_text(PROJECT.format(version=description["info"]["version"]))
        _run(
            *("openapi_python_client", "generate", "--meta", "none", "--fail-on-warning"),
            *("--path", str(work / "description.json"), "--config", str(work / "settings.json")),
            *("--output-path", str(package / NAME)),
            work=work,
        )
        (package / NAME / "py.typed").touch()
        _run("hatchling", "build", "--target", "wheel", "--clean", "--directory", str(folder.resolve()), work=package)
    (wheel,) = folder.glob(f"{NAME}-{description['info']['version']}-*.whl")
    return wheel


def _for_a_client(description: dict[str, Any]) -> dict[str, Any]:
    """The description with one kind of refusal instead of one for each operation and status: a client reads the codes,
    and a class for every set of them would be most of the package."""
    for path in description["paths"].values():
        for operation in path.values():
            kept = {status: each for status, each in operation["responses"].items() if status[0] == "2"}
            operation["responses"] = {**kept, "default": description["components"]["responses"]["any-other"]}
    made: dict[str, Any] = _without_const({**description, "components": {**description["components"], "responses": {}}})
    return made


def _without_const(schema: Any) -> Any:
    """A number that is always the same as an enumeration of one: of a constant the generator makes no valid Python."""
    if isinstance(schema, list):
        return [_without_const(each) for each in schema]
    if not isinstance(schema, dict):
        return schema
    if isinstance(schema.get("const"), int):
        schema = {**{name: each for name, each in schema.items() if name != "const"}, "enum": [schema["const"]]}
    return {name: _without_const(each) for name, each in schema.items()}


def _run(module: str, *arguments: str, work: Path) -> None:
    done = subprocess.run(  # noqa: S603 - tools of ours, with files of ours
        [sys.executable, "-m", module, *arguments], cwd=work, capture_output=True, text=True, check=False
    )
    if done.returncode:
        raise NotMade(f"{done.stdout}{done.stderr}".strip())
