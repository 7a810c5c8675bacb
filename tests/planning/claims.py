"""Every place of a plan where the same quantity is told, side by side: two that differ mislead whoever reads both.

Read off the JSON that every client is sent, so that what is compared is what is shown.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from itertools import groupby
from math import floor
from typing import Any

Key = tuple[str, str]
"""A quantity, and what of."""
Claim = tuple[Key, str, Any]
"""With the place it is told at."""
Json = dict[str, Any]


def claims(plan: Json) -> Iterator[Claim]:
    """Everything that a plan tells at more than one place."""
    for canal in plan["canals"]:
        yield from _stops(plan, canal)
        yield from _ends(canal)
        # What is withheld is not in the order of work yet, and is told of all the same.
        if not canal["withheld"]:
            yield from _needle(canal)
            yield from _work(canal)
            yield from _size(plan, canal)
    for name, order in (("tray", plan["tray"]), ("one at a time", plan["one_at_a_time"])):
        taken_up = [key for key, _ in groupby(step["instrument"] for step in order["steps"])]
        yield ("times that an instrument is taken up", name), "counted", len(taken_up)
        yield ("times that an instrument is taken up", name), "payload", order["changes"]
    laid_out = {item["instrument"]["key"]: set(item["canals"]) for item in plan["tray_list"]}
    taken: dict[str, set[str]] = defaultdict(set)
    for step in plan["tray"]["steps"]:
        taken[step["instrument"]] |= set(step["canals"])
    for key, canals in taken.items():
        # More is laid out than is taken up in that order: what confirms and gauges.
        yield ("canals that it enters", key), "order of the tray", sorted(canals)
        yield ("canals that it enters", key), "laid out", sorted(canals & laid_out.get(key, set()))


def disagreements(every_claim: Iterator[Claim]) -> dict[Key, dict[str, Any]]:
    """Quantities that are told differently, by place."""
    by_key: dict[Key, dict[str, Any]] = defaultdict(dict)
    for key, place, value in every_claim:
        by_key[key][place] = value
    return {key: by for key, by in by_key.items() if len({repr(value) for value in by.values()}) > 1}


def steps_of(canal: Json) -> list[Json]:
    return [node for node in canal["run_sheet"]["nodes"].values() if node["kind"] == "do"]


def mm(length_um: int | None) -> float | None:
    return None if length_um is None else length_um / 1000


def _stops(plan: Json, canal: Json) -> Iterator[Claim]:
    """By phase and instrument, in the table and in the order of work."""
    name = canal["canal"]
    table = {
        (row["phase"], row["instrument"]["key"]): stop["stop_mm"]
        for row in plan["stop_table"]
        for stop in row["stops"]
        if stop["canal"] == name
    }
    for node in steps_of(canal):
        at = (node["phase"].replace("-", " ").capitalize(), node["instrument"])
        if node["action"] == "instrument" and at in table:
            yield ("stop", f"{name} {at[0]} {at[1]}"), "table", table[at]
            yield ("stop", f"{name} {at[0]} {at[1]}"), f"order of work, {node['id']}", mm(node["stop_um"])


def _ends(canal: Json) -> Iterator[Claim]:
    at = "junction" if canal["junction_mm"] is not None and canal["joins"] else "length"
    if canal["end_mm"] is not None:
        yield (f"ends at the {at}", canal["canal"]), "end", canal["end_mm"]
        # Where it joins is told as measured, a stop rounded down to half a millimetre.
        where = floor(canal["junction_mm"] * 2) / 2 if at == "junction" else canal["length"]["stop_mm"]
        yield (f"ends at the {at}", canal["canal"]), at, where


def _needle(canal: Json) -> Iterator[Claim]:
    needles = [node["needle_at_most_um"] for node in steps_of(canal) if node["needle_at_most_um"] is not None]
    if canal["needle"] and canal["needle"]["now"] and needles:
        yield ("needle no deeper than", canal["canal"]), "order of work", mm(max(needles))
        yield (
            ("needle no deeper than", canal["canal"]),
            "needle",
            max(now["at_most_mm"] for now in canal["needle"]["now"]),
        )


def _work(canal: Json) -> Iterator[Claim]:
    """How many insertions are expected, and how much is irrigated on the way."""
    name, nodes = canal["canal"], canal["run_sheet"]["nodes"]
    path = [nodes[node] for node in canal["expected_path"] if node in nodes]
    if canal["expectation"]:
        inserted = [node["id"] for node in path if node["action" if node["kind"] == "do" else "kind"] == "instrument"]
        yield ("insertions expected", name), "expected way", inserted
        yield ("insertions expected", name), "bands", [step["node"] for step in canal["expectation"]["steps"]]
    volumes: dict[str, float] = defaultdict(float)
    for node in path:
        if node["kind"] == "do" and node["irrigant"]:
            volumes[node["irrigant"]] += node["volume_ml"]
    yield ("irrigant in all, ml", name), "expected way", {key: round(ml, 2) for key, ml in sorted(volumes.items())}
    totals = {irrigant["irrigant"]: round(irrigant["volume_ml"], 2) for irrigant in canal["irrigants"]}
    yield ("irrigant in all, ml", name), "totals", dict(sorted(totals.items()))


def _size(plan: Json, canal: Json) -> Iterator[Claim]:
    """The final size where it is chosen, and the hand instrument that confirms it at the end."""
    name, nodes = canal["canal"], canal["run_sheet"]["nodes"]
    named = {item["instrument"]["key"]: item["instrument"] for item in plan["tray_list"]}
    path = [nodes[node] for node in canal["expected_path"] if node in nodes]
    confirms = [node for node in path if node["kind"] == "do" and node["phase"] == "confirm" and node["instrument"]]
    if confirms:
        yield ("final size", name), "chosen", canal["final_size"]
        yield ("final size", name), "confirmed by", named[confirms[0]["instrument"]]["size"]
        yield ("end that is confirmed", name), "end", canal["end_mm"]
        yield ("end that is confirmed", name), "stop", mm(confirms[0]["stop_um"])
