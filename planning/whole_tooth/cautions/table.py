"""The catalogue of cautions as a table for readers, kept between two marks in a text."""

from __future__ import annotations

from planning.contract.cautions import Entry, catalogue
from planning.contract.plan_value import Severity
from planning.foundation.tables import published

START = "<!-- cautions: made by `python3 manage.py caution_table` from planning/data -->"
END = "<!-- /cautions -->"
HEADING = ("code", "severity", "limit", "override", "source (how it is known)")


def with_table(text: str) -> str:
    """The text with the table as it is now. Raises ValueError where the two marks are not there, once and in order."""
    before, start, rest = text.partition(START)
    _, end, after = rest.partition(END)
    if not start or not end or START in after or END in after:
        raise ValueError(f"the text needs one '{START}' and, after it, one '{END}'")
    return f"{before}{START}\n{table()}\n{END}{after}"


def table() -> str:
    """Markdown: one row for each caution of the catalogue, in its order."""
    rows = [HEADING, ("---",) * len(HEADING), *map(_cells, catalogue().values())]
    return "\n".join(f"| {' | '.join(cells)} |" for cells in rows)


def _cells(entry: Entry) -> tuple[str, ...]:
    withholds = f": {entry.withholds.replace('_', ' ')}" if entry.withholds else ""
    severity = "bar" if entry.severity is Severity.STOP else entry.severity
    figure = published().get(entry.row)
    limit = f"{figure.value:g} {figure.unit} (`{figure.key}`)" if figure else ""
    override = "supervisor" if entry.may_override else ""
    return f"`{entry.code}`", f"{severity}{withholds}", limit, override, f"{entry.source} ({entry.know})"
