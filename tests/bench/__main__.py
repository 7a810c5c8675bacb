"""All benchmarks as one table: goal, the last release's figure, today's (of minima, of medians), and in what.

    python -m tests.bench                    all of them, one after the other, on an otherwise quiet machine
    python -m tests.bench events polls       some
    python -m tests.bench --keep [events]    and keep the figures as those of the last release

Each runs in a process of its own. DATABASE_URL names an empty database; without it, SQLite.
"""

from __future__ import annotations

import csv
import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

from tests.bench.rows import AS_JSON, HEAD, LAST_RELEASE, Row, last_release, line

KEEP = "--keep"
FOLDER = Path(__file__).parent
NAMES = sorted(path.stem.removeprefix("bench_") for path in FOLDER.glob("bench_*.py"))


def main(words: list[str]) -> int:
    wanted = [word for word in words if word != KEEP] or NAMES
    if strange := sorted(set(wanted) - set(NAMES)):
        print(f"No such benchmark: {', '.join(strange)}. There are: {', '.join(NAMES)}.")
        return 2
    last, failed = last_release(), []
    print(HEAD)
    for name in wanted:
        print(name, flush=True)
        child = subprocess.Popen(
            [sys.executable, "-m", f"tests.bench.bench_{name}", AS_JSON], stdout=subprocess.PIPE, text=True
        )
        for database, row in _rows(child):
            print(line(row, last.get((name, database, row.what))), flush=True)
            if KEEP in words:
                last[name, database, row.what] = row.now
        if child.wait():
            failed.append(name)
            print(f"  ended with {child.returncode}: what it printed is above", flush=True)
    if KEEP in words:
        _keep(last)
    return 1 if failed else 0


def _rows(child: subprocess.Popen[str]) -> Iterator[tuple[str, Row]]:
    assert child.stdout is not None
    for text in child.stdout:
        row = json.loads(text)
        yield row.pop("database"), Row(**row)


def _keep(figures: dict[tuple[str, str, str], float]) -> None:
    with LAST_RELEASE.open("w", encoding="utf-8", newline="") as file:
        sheet = csv.writer(file, lineterminator="\n")
        sheet.writerow(("bench", "database", "what", "figure"))
        sheet.writerows((*key, f"{figure:.4g}") for key, figure in sorted(figures.items()))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
