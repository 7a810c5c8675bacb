"""The life of a plan: every state, every verb, every role."""

from __future__ import annotations

from itertools import product

import pytest

from cases.domain.access.permissions import RULES, Actor, May, may, refuse_unless
from cases.domain.access.roles import Role
from cases.domain.errors import MoveNotPossible, NotAllowed
from cases.domain.plans.lifecycle import MOVES, PlanState, Verb, after

S, V = PlanState, Verb
# Written out by hand, so that a slip in the table of moves shows.
POSSIBLE = {
    (S.DRAFT, V.SUBMIT): S.WAITING,
    (S.RETURNED, V.SUBMIT): S.WAITING,
    (S.REVOKED, V.SUBMIT): S.WAITING,
    (S.APPROVED, V.REVOKE): S.REVOKED,
    (S.WAITING, V.WITHDRAW): S.DRAFT,
    (S.WAITING, V.APPROVE): S.APPROVED,
    (S.WAITING, V.RETURN): S.RETURNED,
    (S.DRAFT, V.CARRY_OVER): S.APPROVED,
    (S.DRAFT, V.SUPERSEDE): S.SUPERSEDED,
    (S.WAITING, V.SUPERSEDE): S.SUPERSEDED,
    (S.APPROVED, V.SUPERSEDE): S.SUPERSEDED,
    (S.RETURNED, V.SUPERSEDE): S.SUPERSEDED,
    (S.REVOKED, V.SUPERSEDE): S.SUPERSEDED,
    (S.WAITING, V.TAKE_UP_AGAIN): S.DRAFT,
    (S.APPROVED, V.TAKE_UP_AGAIN): S.DRAFT,
    (S.SUPERSEDED, V.TAKE_UP_AGAIN): S.DRAFT,
}


@pytest.mark.parametrize(("state", "verb"), list(product(PlanState, Verb)))
def test_every_move_is_possible_or_refused_with_a_way_out(state: PlanState, verb: Verb) -> None:
    if (state, verb) in POSSIBLE:
        assert after(state, verb) is POSSIBLE[state, verb]
    else:
        with pytest.raises(MoveNotPossible, match=MOVES[verb].done):
            after(state, verb)


def test_nothing_but_a_supervisors_word_leads_to_approved() -> None:
    """Given on this version, or on the one before where no more than lengths have moved since."""
    leading = {move.verb: move.by for move in MOVES.values() if move.to is PlanState.APPROVED}
    assert leading == {Verb.APPROVE: Role.SUPERVISOR, Verb.CARRY_OVER: Role.STUDENT}


ANYBODY, OWN, NO = "anybody's case", "own case only", "no"
# student, supervisor, coordinator
ALLOWED = {
    May.OPEN_CASE: (ANYBODY, NO, NO),
    May.CHART: (OWN, ANYBODY, NO),
    May.CORRECT_ALIAS: (OWN, ANYBODY, ANYBODY),
    May.JUDGE_ANATOMY: (NO, ANYBODY, NO),
    May.PLAN: (OWN, NO, NO),
    May.SUBMIT: (OWN, NO, NO),
    May.REVIEW: (NO, ANYBODY, NO),
    May.OVERRIDE: (NO, ANYBODY, NO),
    May.REVOKE: (NO, ANYBODY, ANYBODY),
    May.SEE_WORKLIST: (NO, ANYBODY, ANYBODY),
    May.KEEP_WEBHOOKS: (NO, NO, ANYBODY),
    May.KEEP_KITS: (NO, NO, ANYBODY),
    May.KEEP_KEYS: (NO, NO, ANYBODY),
    May.KEEP_PLATFORMS: (NO, NO, ANYBODY),
    May.SEE_PEOPLE: (NO, ANYBODY, ANYBODY),
    May.KEEP_PEOPLE: (NO, NO, ANYBODY),
    May.PRACTISE: (ANYBODY, NO, NO),
    May.SET_PRACTICE: (NO, ANYBODY, NO),
    May.SEE_PRACTICE: (ANYBODY, ANYBODY, NO),
}


@pytest.mark.parametrize(("what", "role"), list(product(May, Role)))
def test_who_may_do_what(what: May, role: Role) -> None:
    wanted = ALLOWED[what][list(Role).index(role)]
    actor = Actor(person_id="me", role=role)
    assert may(what, actor, student_id="me") is (wanted != NO)
    assert may(what, actor, student_id="another") is (wanted == ANYBODY)
    if wanted == NO:
        with pytest.raises(NotAllowed, match=RULES[what].otherwise[:20]):
            refuse_unless(what, actor, student_id="me")


DOING = {
    Verb.SUBMIT: May.SUBMIT,
    Verb.WITHDRAW: May.SUBMIT,
    Verb.APPROVE: May.REVIEW,
    Verb.RETURN: May.REVIEW,
    Verb.REVOKE: May.REVOKE,
    Verb.CARRY_OVER: May.PLAN,
    Verb.SUPERSEDE: May.PLAN,
    Verb.TAKE_UP_AGAIN: May.PLAN,
}


# An approval is withdrawn by its giver or in their place.
IN_THEIR_PLACE = {Verb.REVOKE: {Role.COORDINATOR}}


@pytest.mark.parametrize("verb", Verb)
def test_the_moves_and_the_rules_name_the_same_people(verb: Verb) -> None:
    assert RULES[DOING[verb]].roles == {MOVES[verb].by} | IN_THEIR_PLACE.get(verb, set())
