"""At most two images are read at once on a machine, however many processes serve: each reader holds a place."""

from __future__ import annotations

import fcntl
import time
from collections.abc import Iterator, Sequence
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import IO

from cases.imaging.value import ReaderBusy

# A place is a lock on a file of the program: there wherever the program is, changed by nobody, and let go by the
# system when its holder ends, however it ends.
PLACES = (Path(__file__).parent / "child.py", Path(__file__).parent / "closed_off.py")
WAIT_S, AGAIN_S = 20.0, 0.05


@contextmanager
def a_turn(wait_s: float = WAIT_S) -> Iterator[int]:
    """The open file that holds the place: hand it to the reader, which may live longer. Raises ReaderBusy."""
    with ExitStack() as files:
        places = [files.enter_context(path.open("rb")) for path in PLACES]
        held = _first_free(places, time.monotonic() + wait_s)
        for place in places:
            if place is not held:
                place.close()
        yield held.fileno()


def _first_free(places: Sequence[IO[bytes]], until: float) -> IO[bytes]:
    while True:
        for place in places:
            try:
                fcntl.flock(place, fcntl.LOCK_EX | fcntl.LOCK_NB)
            except BlockingIOError:
                continue
            return place
        if time.monotonic() >= until:
            raise ReaderBusy
        time.sleep(AGAIN_S)
