"""Fetches a programme's tables once a night, as another system would: `nightly.py URL KEY PROGRAMME FOLDER`."""

import json
import sys
from pathlib import Path
from typing import Any
from urllib.parse import urljoin
from urllib.request import Request, urlopen


def fetch(url: str, key: str, programme: str, folder: Path) -> None:
    """Puts each table into the folder, and up to which change they hold. What broke off goes on where it did."""

    def get(address: str) -> Any:
        return urlopen(Request(urljoin(url, address), headers={"Authorization": f"Bearer {key}"}), timeout=90)  # noqa: S310

    contents = json.load(get(f"/api/v1/programmes/{programme}/export"))
    holds, begun = folder / "changes_after", folder / "changes_after.part"
    if not holds.exists() or holds.read_text() != contents["changes_after"]:
        begun.write_text(begun.read_text() if begun.exists() else contents["changes_after"])
        for table in contents["tables"]:
            with (folder / f"{table['name']}.ndjson.part").open("a+b") as part:
                part.seek(0)
                address = table["ndjson"]
                for line in part:
                    address = f"{table['ndjson']}?after={json.loads(line)['id']}"
                while address:
                    page = get(address)
                    part.write(page.read())
                    address = page.headers.get("Link", "").strip("<").partition(">")[0]
        for part_file in sorted(folder.glob("*.part"), reverse=True):
            part_file.rename(folder / part_file.stem)


if __name__ == "__main__":
    fetch(sys.argv[1], sys.argv[2], sys.argv[3], Path(sys.argv[4]))
