"""Webhooks as they are sent: at least once, in order of each case, again until they are taken or given up."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta
from threading import Event
from typing import Any

import pytest
from django.core.management import call_command
from django.utils import timezone
from pytest_django import Settings

from cases.api.v1.webhook_messages import message_of
from cases.domain import webhooks as rules
from cases.domain.access.roles import Role
from cases.domain.feed import FeedKind
from cases.domain.webhooks import TRIED_FOR_S, DeliveryState, NoAnswer, WebhookState, wait_s
from cases.models import Canal, Case, ChangeLog, Delivery, Programme, Webhook
from cases.services.charting import canals
from cases.services.common.feed import number
from cases.services.webhooks import keeping, outbox
from cases.services.webhooks.deliver import Worker
from cases.services.webhooks.keeping import Keeper
from cases.services.webhooks.line import Reply
from tests import factories
from tests.at_once import at_once
from tests.cast import open_case
from tests.webhook_receiver import Receiver, receiver

pytestmark = pytest.mark.django_db


class Scene:
    """Two cases, and a webhook of everything that happens in them."""

    def __init__(self, address: str) -> None:
        self.programme: Programme = factories.ProgrammeFactory.create()
        self.student = factories.member(self.programme, "priya", Role.STUDENT)
        self.keeper = Keeper(actor=factories.member(self.programme, "rosa", Role.COORDINATOR))
        self.first, self.second = (open_case(self.programme, self.student) for _ in range(2))
        number(self.programme.pk)
        self.hook = self.hooked(address)

    def hooked(self, address: str, *kinds: FeedKind) -> Webhook:
        return keeping.add(keeper=self.keeper, programme_id=self.programme.pk, address=address, kinds=kinds, reached=0)

    def changes(self, case: Case, times: int = 1) -> None:
        canal = Canal.objects.filter(tooth__case=case).order_by("place")[0]
        for turn in range(times):
            point = {"reference_point": f"{canal.reference_point} {turn}"[-40:]}
            canals.change_canal(actor=self.student, canal=canal, changes=point)

    def now(self) -> Webhook:
        return Webhook.objects.get(pk=self.hook.pk)


def send() -> None:
    Worker(message_of).run_once()


def later(**time: Any) -> None:
    """So much time passes for all that waits."""
    passed = timedelta(**time)
    for hook in Webhook.objects.all():
        Webhook.objects.filter(pk=hook.pk).update(free_at=hook.free_at - passed)
    for row in Delivery.objects.filter(state=DeliveryState.WAITING):
        first = row.first_tried_at and row.first_tried_at - passed
        Delivery.objects.filter(pk=row.pk).update(due_at=row.due_at - passed, first_tried_at=first)


@pytest.fixture
def here(settings: Settings) -> Iterator[Receiver]:
    settings.WEBHOOKS_INSIDE = True
    with receiver() as receives:
        yield receives


@pytest.fixture
def scene(db: None, here: Receiver) -> Scene:
    return Scene(here.at)


def test_the_published_example_is_signed_as_published() -> None:
    """The reference vector of the Standard Webhooks libraries."""
    made = rules.signature(
        ["whsec_MfKQ9r8GKYqrTwjUPD8ILPZIo2LaLaSw"],
        id="msg_p5jXN8AQM9LWM0D4loKWxJek",
        at_s=1614265330,
        body='{"test": 2432232314}',
    )
    assert made == "v1,g0hM9SsE+OTPJTGt/tmIKtSyZlE3uFJELVlNIOLJ1OE="


def test_a_secret_is_as_long_as_the_scheme_asks() -> None:
    """Between 24 and 64 bytes, and another one each time."""
    from standardwebhooks import Webhook as Judge

    first, second = rules.new_secret(), rules.new_secret()
    assert 24 <= len(Judge(first)._whsecret) <= 64
    assert first != second
    assert len(first) <= rules.MOST_SECRET


def test_everything_is_sent_once_and_in_order(scene: Scene, here: Receiver) -> None:
    for _ in range(15):
        scene.changes(scene.first)
        scene.changes(scene.second)
    send()
    assert here.positions() == list(range(1, 33))
    assert len({message.id for message in here.got}) == 32
    assert len({message.connection for message in here.got}) == 1
    for message in here.got:
        message.verify(scene.hook.secret)
    send()
    assert len(here.got) == 32


def test_only_what_was_chosen_is_sent(scene: Scene, here: Receiver) -> None:
    scene.hook.delete()
    hook = scene.hooked(here.at, FeedKind.CANAL_CHANGED)
    scene.changes(scene.first)
    send()
    assert here.positions() == [3]
    assert Webhook.objects.get(pk=hook.pk).reached == 3


@pytest.mark.parametrize("status", [301, 307, 400, 404, 500])
def test_a_case_waits_and_others_go_on(status: int, scene: Scene, here: Receiver) -> None:
    scene.changes(scene.first, 2)
    here.answer = lambda message: (
        status if message.data["case_id"] == str(scene.first.pk) else 204,
        {"Location": here.at},
    )
    send()
    assert here.positions() == [1, 2]
    scene.changes(scene.second)
    scene.changes(scene.first)
    send()
    assert here.positions() == [1, 2, 5]
    here.answer = lambda _: (204, {})
    later(seconds=wait_s(1) + 1)
    send()
    assert here.of_case(scene.first.pk) == [1, 1, 3, 4, 6]


@pytest.mark.parametrize("status", [429, 502, 503, 504])
def test_who_is_away_is_left_alone_for_a_moment(status: int, scene: Scene, here: Receiver) -> None:
    here.answer = lambda _: (status, {})
    for _ in range(2):
        send()
    assert here.positions() == [1]
    here.answer = lambda _: (204, {})
    later(seconds=wait_s(1) + 1)
    send()
    assert here.positions() == [1, 1, 2]


def test_it_is_asked_again_when_it_says(scene: Scene, here: Receiver) -> None:
    here.answer = lambda _: (503, {"Retry-After": "600"})
    send()
    later(seconds=590)
    send()
    assert len(here.got) == 1
    later(seconds=11)
    here.answer = lambda _: (503, {"Retry-After": "9999999"})
    send()
    assert len(here.got) == 2
    assert scene.now().free_at - timezone.now() < timedelta(seconds=rules.MOST_RETRY_AFTER_S + 1)


def test_it_is_tried_for_two_days_and_then_given_up_with_notice(scene: Scene, here: Receiver) -> None:
    here.answer = lambda _: (500, {})
    tries, passed = 0, timedelta()
    while scene.now().state == WebhookState.ACTIVE:
        send()
        tries += 1
        passed += timedelta(seconds=wait_s(tries))
        later(seconds=wait_s(tries))
    assert passed - timedelta(seconds=wait_s(tries)) <= timedelta(seconds=TRIED_FOR_S) < passed
    assert here.of_case(scene.first.pk) == [1] * tries
    (line,) = ChangeLog.objects.filter(verb="give up")
    assert (line.actor, f'"tries":{tries}' in line.after) == (scene.keeper.actor, True)
    sent = len(here.got)
    send()
    assert len(here.got) == sent
    _goes_on_from_there(scene, here)


def _goes_on_from_there(scene: Scene, here: Receiver) -> None:
    here.answer = lambda _: (204, {})
    here.got.clear()
    given_up = scene.now()
    assert given_up.given_up_at is not None
    keeping.change(
        keeper=scene.keeper, webhook=given_up, seen_revision=str(given_up.revision), changes={"state": "active"}
    )
    scene.changes(scene.first)
    send()
    assert here.positions() == [1, 2, 3]


def test_the_waits_are_those_that_are_described() -> None:
    waits = [wait_s(tries) for tries in range(1, 60)]
    assert waits[:7] == [5, 30, 120, 600, 1800, 3600, 3600]
    assert waits == sorted(waits)


def test_who_is_gone_is_asked_no_more(scene: Scene, here: Receiver) -> None:
    here.answer = lambda _: (410, {})
    send()
    assert (len(here.got), scene.now().state) == (1, WebhookState.GIVEN_UP)


def test_whoever_is_killed_at_it_keeps_the_lease_and_then_another_goes_on(scene: Scene, here: Receiver) -> None:
    killed = outbox.take_up(webhook_id=scene.hook.pk)
    assert killed is not None
    send()
    assert here.got == []
    later(seconds=61)
    send()
    assert here.positions() == [1, 2]
    # Who was only slow, and not killed, changes nothing any more.
    assert not outbox.note(batch=killed, delivery=killed.deliveries[0], reply=Reply(status=500))
    assert set(Delivery.objects.values_list("state", "tries")) == {("delivered", 1)}


def test_what_is_told_anew_comes_after_what_was_on_its_way(scene: Scene, here: Receiver) -> None:
    """Whoever holds the batch ends with the message that is on its way, and nobody else begins before."""
    scene.changes(scene.first)
    number(scene.programme.pk)
    batch = outbox.take_up(webhook_id=scene.hook.pk)
    assert batch is not None
    keeping.replay(keeper=scene.keeper, webhook=scene.now(), reached=1)
    send()
    assert here.got == []
    assert not outbox.note(batch=batch, delivery=batch.deliveries[0], reply=Reply(status=204))
    outbox.give_back(batch=batch)
    send()
    assert here.positions() == [2, 3]
    assert Delivery.objects.filter(state=DeliveryState.REPLACED).count() == 3


def test_a_receiver_that_is_not_there_is_said_to_be_so(scene: Scene, here: Receiver) -> None:
    Webhook.objects.update(address="http://127.0.0.1:9/")
    send()
    row = Delivery.objects.get(tries=1)
    assert (row.status, row.no_answer) == (None, NoAnswer.NOT_REACHED)


def test_what_was_sent_is_kept_for_a_month_and_what_waits_for_ever(scene: Scene, here: Receiver) -> None:
    here.answer = lambda message: (204 if message.data["position"] == 1 else 500, {})
    send()
    Delivery.objects.update(created_at=timezone.now() - timedelta(days=29))
    call_command("tidy", verbosity=0)
    assert Delivery.objects.count() == 2
    Delivery.objects.update(created_at=timezone.now() - timedelta(days=31))
    call_command("tidy", verbosity=0)
    assert Delivery.objects.get().state == DeliveryState.WAITING


@pytest.mark.usefixtures("database_of_many")
class TestAtOnce:
    def test_two_workers_send_each_message_once_and_in_order_while_others_write(self, settings: Settings) -> None:
        settings.WEBHOOKS_INSIDE = True
        with receiver() as one_side, receiver() as other_side:
            scene = Scene(one_side.at)
            scene.hooked(other_side.at)
            workers = [Worker(message_of) for _ in range(2)]
            done = Event()

            def write() -> None:
                for _ in range(10):
                    scene.changes(scene.first)
                    scene.changes(scene.second)
                done.set()

            def stop() -> None:
                assert done.wait(60)
                while (
                    Webhook.objects.filter(reached__lt=22).exists()
                    or Delivery.objects.exclude(state="delivered").exists()
                ):
                    done.wait(0.05)
                for worker in workers:
                    worker.stopped.set()

            at_once(write, stop, *(worker.run for worker in workers))
            for side in (one_side, other_side):
                assert side.positions() == list(range(1, 23))
            assert not Webhook.objects.exclude(lease=None).exists()
