"""Time-based one-time codes (RFC 6238) of six digits, a new one every thirty seconds."""

from __future__ import annotations

from base64 import b32encode

import pyotp
from pyotp.utils import strings_equal

STEP_S = 30  # RFC 6238, 5.2: the step it recommends
# RFC 6238, 5.2: at most one step for the delay on the way to the server. One earlier and one later: a clock may be off.
WINDOW_STEPS = 1
SECRET_BYTES = 20  # RFC 4226, 4, R6: 160 bits are recommended


def secret_text(secret: bytes) -> str:
    """The secret as code apps take it: base 32 (RFC 4648)."""
    return b32encode(secret).decode("ascii")


def code_at(secret: bytes, step: int) -> str:
    """The code of one step, counted from the Unix epoch."""
    return pyotp.TOTP(secret_text(secret)).generate_otp(step)


def matching_step(secret: bytes, code: str, *, at_s: float, later_than: int) -> int | None:
    """The step of the code among those that count at this time, none where it is wrong or not later than `later_than`:
    a code counts once (RFC 6238, 5.2)."""
    present = int(at_s) // STEP_S
    steps = range(max(present - WINDOW_STEPS, later_than + 1), present + WINDOW_STEPS + 1)
    return next((step for step in steps if strings_equal(code_at(secret, step), code)), None)


def address(secret: bytes, *, of: str, issuer: str) -> str:
    """What a code app reads from the square code: `otpauth://totp/...`."""
    return pyotp.TOTP(secret_text(secret)).provisioning_uri(name=of, issuer_name=issuer)
