"""The page that shows all pictures: a row for each screen, a column for each size and scheme."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from html import escape

HEAD = """<!doctype html><meta charset="utf-8"><title>Every screen</title>
<style>
  body { margin: 16px; font: 16px sans-serif; background: #ddd }
  figure { display: flex; gap: 8px; margin: 0 0 24px; align-items: flex-start }
  img { height: 480px; border: 1px solid #888 }
</style>
"""


def page_of(rows: Mapping[str, Sequence[str]]) -> str:
    """By screen, the names of its pictures."""
    return HEAD + "\n".join(
        f"<h2>{escape(screen)}</h2>\n<figure>"
        + "".join(f'<a href="{name}"><img src="{name}" alt="{name}" loading="lazy"></a>' for name in names)
        + "</figure>"
        for screen, names in rows.items()
    )
