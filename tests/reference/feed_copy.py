"""Keeps a copy of a programme's cases, as another system would write it: `feed_copy.py URL KEY PROGRAMME FILE`."""

import json
import sys
from pathlib import Path
from typing import Any
from urllib.parse import urljoin
from urllib.request import Request, urlopen


def copied(url: str, key: str, programme: str, copy: Any) -> Any:
    """The copy brought up to date; begun anew where it is None. An HTTPError of status 409 says that it has to be."""

    def get(address: str) -> Any:
        asked = Request(urljoin(url, address), headers={"Authorization": f"Bearer {key}"})  # noqa: S310
        with urlopen(asked, timeout=60) as answer:  # noqa: S310
            return json.load(answer)

    at = f"/api/v1/programmes/{programme}"
    if copy is None:  # First how far changes go: what changes while the lists are read is then read once more.
        copy, page = {"next": get(f"{at}/changes?after=last")["next"], "cases": {}}, {"next": f"{at}/cases"}
        while page["next"]:
            page = get(page["next"])
            copy["cases"] |= {case["id"]: get(f"/api/v1/cases/{case['id']}") for case in page["results"]}
    more = True
    while more:
        page = get(f"{at}/changes?limit=1000&after={copy['next']}")
        changed = {change["case_id"] for change in page["results"]} - {None}
        copy["cases"] |= {case: get(f"/api/v1/cases/{case}") for case in changed}
        copy["next"], more = page["next"], page["more"]
    return copy


if __name__ == "__main__":
    file = Path(sys.argv[4])
    kept = json.loads(file.read_text()) if file.exists() else None
    file.write_text(json.dumps(copied(sys.argv[1], sys.argv[2], sys.argv[3], kept)))
