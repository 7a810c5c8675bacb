"""Closes a process off before it meets a file from outside: from then on it opens no file and no connection, starts
nothing, and what it may take is counted.

The bounds of the operating system hold everywhere. On Linux the kernel is also told which few of its calls a decoder
needs, and answers every other with 'not permitted': that needs no rights and holds in a container too.
"""

from __future__ import annotations

import ctypes
import platform
import resource
import struct
import sys

from cases.imaging.value import Limits

# The two machines whose numbers of calls are written below (linux/unistd of each), and linux/audit.h's names for them.
ARCHITECTURES = {"x86_64": 0xC000003E, "aarch64": 0xC00000B7}
# Memory, threads of this process, time, chance, and reading and writing what is open already.
CALLS = {
    "x86_64": (
        *(0, 1, 3, 5, 8, 9, 10, 11, 12, 13, 14, 15, 19, 20, 24, 25, 28, 35, 39, 60, 96, 98, 99, 131, 186),
        *(202, 204, 218, 219, 228, 229, 230, 231, 273, 309, 318, 334),
    ),
    "aarch64": (
        *(57, 62, 63, 64, 65, 66, 80, 93, 94, 96, 98, 99, 101, 113, 114, 115, 122, 123, 124, 128, 132, 134, 135, 139),
        *(165, 168, 169, 172, 178, 179, 214, 215, 216, 222, 226, 233, 278, 293),
    ),
}
MACHINE = platform.machine()
CLONE = {"x86_64": 56, "aarch64": 220}
CLONE3 = 435
THREAD = 0x10000  # clone(2), CLONE_THREAD: not a process of its own
# linux/bpf_common.h, linux/seccomp.h, linux/prctl.h
LOAD, IF_EQUAL, IF_SET, RETURN = 0x20, 0x15, 0x45, 0x06
CALL_AT, ARCHITECTURE_AT, FIRST_ARGUMENT_AT = 0, 4, 16
ALLOW, REFUSE = 0x7FFF0000, 0x00050000
NOT_PERMITTED, NOT_KNOWN = 1, 38
NO_NEW_RIGHTS, SECCOMP, FILTER = 38, 22, 2


def bound(limits: Limits) -> None:
    """From here on the process cannot take more, write files or leave its memory behind."""
    resource.setrlimit(resource.RLIMIT_AS, (limits.memory_bytes, limits.memory_bytes))
    for what in (resource.RLIMIT_FSIZE, resource.RLIMIT_CORE):
        resource.setrlimit(what, (0, 0))
    # At the first it is told why it is ended (SIGXCPU), at the second it would not be.
    resource.setrlimit(resource.RLIMIT_CPU, (limits.computing_seconds, limits.computing_seconds + 1))


def close(machine: str = MACHINE) -> bool:
    """Closes the process off: it opens neither file nor connection any more. Returns whether the kernel refuses every
    other call too.
    """
    # What is open stays open: the file that was sent, and the way for the answer.
    resource.setrlimit(resource.RLIMIT_NOFILE, (0, 0))
    return _filtered(machine)


def _filtered(machine: str) -> bool:
    if sys.platform != "linux" or machine not in ARCHITECTURES or sys.maxsize < 2**32:
        return False
    program = b"".join(_program(machine))
    steps = ctypes.create_string_buffer(program, len(program))
    # struct sock_fprog: how many steps, and where they are.
    filter_program = ctypes.create_string_buffer(struct.pack("@HP", len(program) // 8, ctypes.addressof(steps)))
    prctl = ctypes.CDLL(None, use_errno=True).prctl
    prctl.argtypes = [ctypes.c_int, *[ctypes.c_ulong] * 4]
    return not prctl(NO_NEW_RIGHTS, 1, 0, 0, 0) and not prctl(SECCOMP, FILTER, ctypes.addressof(filter_program), 0, 0)


def _program(machine: str) -> list[bytes]:
    """Steps of the kernel's packet filter: each what, how far on where it holds and where not, and a number."""
    refuse = _step(RETURN, REFUSE | NOT_PERMITTED)
    return [
        _step(LOAD, ARCHITECTURE_AT),
        _step(IF_EQUAL, ARCHITECTURES[machine], 1, 0),
        refuse,
        _step(LOAD, CALL_AT),
        *(step for call in CALLS[machine] for step in (_step(IF_EQUAL, call, 0, 1), _step(RETURN, ALLOW))),
        # Its flags lie in memory, where a filter cannot look: as if the kernel had only the older call.
        _step(IF_EQUAL, CLONE3, 0, 1),
        _step(RETURN, REFUSE | NOT_KNOWN),
        _step(IF_EQUAL, CLONE[machine], 0, 3),
        _step(LOAD, FIRST_ARGUMENT_AT),
        _step(IF_SET, THREAD, 0, 1),
        _step(RETURN, ALLOW),
        refuse,
    ]


def _step(what: int, number: int, if_so: int = 0, if_not: int = 0) -> bytes:
    return struct.pack("@HBBI", what, if_so, if_not, number)
