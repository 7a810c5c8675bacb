"""The page of cautions is the catalogue's."""

from __future__ import annotations

import pytest

from planning.contract.cautions import catalogue
from planning.whole_tooth.cautions.table import END, START, table, with_table
from tests.architecture import tree


def test_the_page_has_the_table_as_the_data_are_now() -> None:
    """`python3 manage.py caution_table` writes it."""
    page = tree.text(tree.ROOT / "planning" / "CAUTIONS.md")
    assert with_table(page) == page


def test_every_caution_has_a_row_with_its_source() -> None:
    rows = table().splitlines()[2:]
    assert [row.split("`")[1] for row in rows] == list(catalogue())
    assert all(entry.source in row for entry, row in zip(catalogue().values(), rows, strict=True))
    assert any("0.3 mm (`wall.stop`) | supervisor | Lim & Stock 1987" in row for row in rows)


@pytest.mark.parametrize("text", ["no marks", f"{START} only", f"{END} {START}", f"{START}{END}{START}{END}"])
def test_a_text_without_the_two_marks_is_left_alone(text: str) -> None:
    with pytest.raises(ValueError, match="needs one"):
        with_table(text)
