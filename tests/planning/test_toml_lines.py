"""Lines of tables and keys, counted by hand in the text below."""

from __future__ import annotations

import tomllib

import pytest

from planning.techniques.toml_lines import Lines

TEXT = '''\
# a comment with [brackets] and "quotes
name = "one # no comment" # a comment

list = [
  1, # "
  2,
]
"quoted key" = \'it\\'
long = """
[[parts]]
key = "not here"
\\""" still inside
"""
[[parts]]
key = 'first'
point = { x = 1, y = { z = [2, 3] } }

[[parts]]

  key = "second"
[one.table]
dotted.key = true
'''


@pytest.mark.parametrize(
    ("path", "line"),
    [
        (("name",), 2),
        (("list",), 4),
        (("list", 1), 4),  # of an element the list's
        (("quoted key",), 8),
        (("long",), 9),
        (("parts", 0), 14),
        (("parts", 0, "key"), 15),
        (("parts", 0, "point", "y", "z"), 16),
        (("parts", 0, "missing"), 14),  # of what is not there the table's
        (("parts", 1), 18),
        (("parts", 1, "key"), 20),
        (("one", "table", "dotted", "key"), 22),
        (("nowhere",), 1),
        ((), 1),
    ],
)
def test_the_line_of_a_path(path: tuple[str | int, ...], line: int) -> None:
    tomllib.loads(TEXT)
    assert Lines(TEXT).of(path) == line
