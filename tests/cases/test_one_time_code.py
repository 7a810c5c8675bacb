"""One-time codes, held against the published vectors of RFC 6238."""

from __future__ import annotations

import pytest

from cases.domain.access.one_time_code import STEP_S, code_at, matching_step, secret_text

# RFC 6238, appendix B: the secret of the SHA-1 rows, and of each time the code of eight digits. A code is a number
# modulo ten to the digits (RFC 4226, 5.3), so one of six digits is the last six of these.
SECRET = b"12345678901234567890"
VECTORS = {
    59: "94287082",
    1111111109: "07081804",
    1111111111: "14050471",
    1234567890: "89005924",
    2000000000: "69279037",
    20000000000: "65353130",
}


@pytest.mark.parametrize(("at_s", "code"), VECTORS.items())
def test_the_vectors_of_the_standard(at_s: int, code: str) -> None:
    assert code_at(SECRET, at_s // STEP_S) == code[-6:]
    assert matching_step(SECRET, code[-6:], at_s=at_s, later_than=0) == at_s // STEP_S


def test_the_secret_as_apps_take_it() -> None:
    """RFC 4648, 6, of the same twenty bytes; worked out with coreutils' base32."""
    assert secret_text(SECRET) == "GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ"


NOW_S = 1111111111
NOW = NOW_S // STEP_S  # its step began 1 s before: 37037037 · 30 = 1111111110


@pytest.mark.parametrize(("away", "counts"), [(-2, False), (-1, True), (0, True), (1, True), (2, False)])
def test_a_window_of_one_step(away: int, counts: bool) -> None:
    """RFC 6238, 5.2: at most one step back; one ahead for a clock that is a little fast."""
    step = matching_step(SECRET, code_at(SECRET, NOW + away), at_s=NOW_S, later_than=0)
    assert step == (NOW + away if counts else None)


def test_the_step_before_ended_a_second_ago() -> None:
    """Appendix B's codes of 1111111109 and 1111111111 lie on the two sides of a step's edge."""
    assert matching_step(SECRET, "081804", at_s=NOW_S, later_than=0) == NOW - 1
    assert matching_step(SECRET, "050471", at_s=NOW_S - 2, later_than=0) == NOW


@pytest.mark.parametrize("used", [NOW, NOW + 1])
def test_no_code_counts_twice_nor_one_before_it(used: int) -> None:
    """RFC 6238, 5.2: the verifier must not accept the second attempt of a code."""
    assert matching_step(SECRET, code_at(SECRET, NOW), at_s=NOW_S, later_than=used) is None


@pytest.mark.parametrize("code", ["", "05047", "0504710", "050472"])
def test_anything_else_is_wrong(code: str) -> None:
    assert matching_step(SECRET, code, at_s=NOW_S, later_than=0) is None
