"""What classes and fields say of themselves: their docstrings, read from the source."""

from __future__ import annotations

import ast
import inspect
import sys
import textwrap
from functools import cache


def class_doc(cls: type) -> str:
    """The docstring of a class; empty where nobody wrote one."""
    doc = cls.__dict__.get("__doc__") or ""
    made_up = doc.startswith(f"{cls.__name__}(")  # what the dataclass decorator writes where nobody did
    return "" if made_up else inspect.cleandoc(doc)


@cache
def field_docs(cls: type) -> dict[str, str]:
    """The text under each field of a class, by the field's name, inherited ones included."""
    found: dict[str, str] = {}
    for base in reversed(cls.__mro__):
        if base.__module__.partition(".")[0] in sys.stdlib_module_names:
            continue
        for definition in ast.parse(textwrap.dedent(inspect.getsource(base))).body:
            if isinstance(definition, ast.ClassDef):
                found.update(_texts_under_fields(definition))
    return found


def _texts_under_fields(definition: ast.ClassDef) -> dict[str, str]:
    found: dict[str, str] = {}
    for field, text in zip(definition.body, definition.body[1:], strict=False):
        name = _assigned(field)
        if name and isinstance(text, ast.Expr) and isinstance(text.value, ast.Constant):
            found[name] = inspect.cleandoc(str(text.value.value))
    return found


def _assigned(statement: ast.stmt) -> str:
    if isinstance(statement, ast.AnnAssign) and isinstance(statement.target, ast.Name):
        return statement.target.id
    if isinstance(statement, ast.Assign) and isinstance(statement.targets[0], ast.Name):
        return statement.targets[0].id
    return ""
