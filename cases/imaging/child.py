"""The process that reads one image: from standard input to standard output, within its bounds, and ends.

The decoders are large programs in C that meet files from anywhere. Whatever such a file makes of them happens here:
this process opens no file and no connection, takes no more than its share of memory and time, and nobody else's data
is in it.
"""

from __future__ import annotations

import gc
import json
import sys
from collections.abc import Callable, Iterator
from dataclasses import asdict
from functools import partial

from cases.domain.images import DataSetUids, ImageKind
from cases.imaging.closed_off import bound, close
from cases.imaging.faults import sentence_for
from cases.imaging.kinds import kind_of
from cases.imaging.value import Clean, Limits


def main(limits: Limits, uids: DataSetUids) -> int:
    bound(limits)
    data = sys.stdin.buffer.read()
    # Of what is loaded nothing is garbage, and to look for it takes a tenth of the time.
    gc.disable()
    read = _decoders(data, limits, uids)
    gc.enable()
    for piece in ([_line({"closed_off": close()})], _answer(partial(read, data))):
        sys.stdout.buffer.writelines(piece)
        sys.stdout.buffer.flush()
    return 0


def _decoders(data: bytes, limits: Limits, uids: DataSetUids) -> Callable[[bytes], Clean]:
    """Loads those of the kind, within the bounds and before anything is closed: loading takes longer than reading."""
    if (kind := kind_of(data)) is ImageKind.DICOM:
        from cases.imaging import dicom

        return partial(dicom.clean, limits=limits, uids=uids)
    from cases.imaging import pictures

    return partial(pictures.clean, kind=kind, limits=limits)


def _answer(read: Callable[[], Clean]) -> Iterator[bytes]:
    """One line of JSON, then the files it names, one behind the other."""
    try:
        clean = read()
    except Exception as error:
        # Decoders raise whatever their authors thought of.
        yield _line({"refused": sentence_for(error)})
        return
    facts = asdict(clean)
    files = [(name, facts.pop(name)) for name in ("view", "thumbnail", "data_set")]
    yield _line({"clean": facts, "files": [(name, len(content)) for name, content in files]})
    yield from (content for _, content in files)


def _line(facts: object) -> bytes:
    return json.dumps(facts, allow_nan=False).encode() + b"\n"


if __name__ == "__main__":
    sys.exit(main(Limits(**json.loads(sys.argv[1])), DataSetUids(**json.loads(sys.argv[2]))))
