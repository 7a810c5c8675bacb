"""The process that reads one image: from standard input to standard output, within its bounds, and ends.

The decoders are large programs in C that meet files from anywhere. Whatever such a file makes of them happens here:
this process writes no file, takes no more than its share of memory and time, and nobody else's data is in it.
"""

from __future__ import annotations

import json
import resource
import sys
from dataclasses import asdict

from cases.domain.images import ImageKind
from cases.imaging.kinds import kind_of
from cases.imaging.value import Clean, Limits, Unreadable

DAMAGED = "The file is damaged: it could not be read to its end. Send it again, or take another image."
TOO_LARGE = "The image needs more memory than one image may take. Send a smaller one."


def bound(limits: Limits) -> None:
    """From here on the process cannot take more, write files or leave its memory behind."""
    for what, most in (
        (resource.RLIMIT_AS, limits.memory_bytes),
        (resource.RLIMIT_CPU, limits.seconds),
        (resource.RLIMIT_FSIZE, 0),
        (resource.RLIMIT_CORE, 0),
    ):
        resource.setrlimit(what, (most, most))


def main(limits: Limits) -> int:
    bound(limits)
    sys.stdout.buffer.write(_answer(sys.stdin.buffer.read(), limits))
    return 0


def _answer(data: bytes, limits: Limits) -> bytes:
    """One line of JSON, then the files it names, one behind the other."""
    try:
        clean = _read(data, limits)
    except Unreadable as refusal:
        return _line({"refused": str(refusal)})
    except MemoryError:
        return _line({"refused": TOO_LARGE})
    except ImportError:
        raise  # the installation is at fault and not the image
    except Exception:
        # Decoders raise whatever their authors thought of; for the sender it is all the same.
        return _line({"refused": DAMAGED})
    told = asdict(clean)
    files = [(name, told.pop(name)) for name in ("view", "thumbnail", "data_set")]
    head = _line({"clean": told, "files": [(name, len(content)) for name, content in files]})
    return head + b"".join(content for _, content in files)


def _read(data: bytes, limits: Limits) -> Clean:
    # Decoders are loaded only now, within the bounds, and only those of the kind: loading takes longer than reading.
    if (kind := kind_of(data)) is ImageKind.DICOM:
        from cases.imaging import dicom

        return dicom.clean(data, limits)
    from cases.imaging import pictures

    return pictures.clean(data, kind, limits)


def _line(told: object) -> bytes:
    return json.dumps(told, allow_nan=False).encode() + b"\n"


if __name__ == "__main__":
    sys.exit(main(Limits(**json.loads(sys.argv[1]))))
