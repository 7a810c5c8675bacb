"""Sealed messages against the worked example of RFC 8291, section 5 and appendix A (its numbers from memory: had one
been remembered wrongly, no cipher would give the same bytes)."""

from __future__ import annotations

import pytest
from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.asymmetric import ec

from cases.services.people.sealed import named, point, quoted, seal, unquoted
from tests.push_service import Browser, claims

SAID = b"When I grow up, I want to be a watermelon"
SENDER = "yfWPiYE-n46HLnH0KqZOF1fJJU3MYrct3AELtAQ-oRw"
SALT = "DGv6ra1nlYgDCS1FRnbzlw"
P256DH = "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4"
AUTH = "BTBZMqHH6r4Tts7J_aSIgg"
SEALED = (
    "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27ml"
    "mlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPT"
    "pK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN"
)


def test_the_example_of_the_standard_comes_out_to_the_byte() -> None:
    sender = ec.derive_private_key(int.from_bytes(unquoted(SENDER)), ec.SECP256R1())
    assert quoted(seal(SAID, p256dh=P256DH, auth=AUTH, sender=sender, salt=unquoted(SALT))) == SEALED


def test_no_two_messages_are_sealed_alike_and_only_their_browser_reads_them() -> None:
    browser = Browser()
    first, second = (seal(SAID, p256dh=browser.keys["p256dh"], auth=browser.keys["auth"]) for _ in range(2))
    assert first != second
    assert [browser.read(first), browser.read(second)] == [SAID, SAID]
    with pytest.raises(InvalidTag):
        Browser(auth=bytes(16)).read(first)


def test_who_sends_is_named_for_half_a_day() -> None:
    key = ec.generate_private_key(ec.SECP256R1())
    claimed = claims(named(key, audience="https://push.example", contact="https://here.example"), quoted(point(key)))
    assert (claimed["aud"], claimed["sub"]) == ("https://push.example", "https://here.example")
    other = ec.generate_private_key(ec.SECP256R1())
    with pytest.raises(AssertionError):
        claims(named(other, audience="https://push.example", contact="https://here.example"), quoted(point(key)))
