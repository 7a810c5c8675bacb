"""What a platform sends, held against its registration by the kept library, which sees nothing but these parts.

The library's own sessions would store the token with the names in it, and would take the same token a second time:
here a state is signed and bound to its browser by a cookie, the nonce follows from it, and both are used up together.
"""

from __future__ import annotations

import logging
from collections.abc import Mapping
from dataclasses import dataclass
from hashlib import sha256
from secrets import token_urlsafe
from typing import Any, cast
from urllib.parse import urlencode

import requests
from django.core import signing
from django.core.cache import cache
from django.utils.crypto import salted_hmac
from jwcrypto.common import JWException
from pylti1p3.deployment import Deployment
from pylti1p3.exception import LtiException, LtiKeyException
from pylti1p3.message_launch import MessageLaunch
from pylti1p3.registration import Registration
from pylti1p3.request import Request
from pylti1p3.session import SessionService
from pylti1p3.tool_config.abstract import ToolConfAbstract

from cases.domain.errors import NotUsable
from cases.domain.lti import GRADES_CLAIM, MOST_ADDRESS, MOST_ID, SCORE_SCOPE
from cases.models import LtiPlatform
from cases.services.lti.line import PlatformSession, refuse_address
from cases.services.lti.own_key import own_key
from planning.foundation.encoding import digest

logger = logging.getLogger(__name__)

STATE, STATE_S = "lti state", 600
KEYS_KEPT_S = 600
CLAIM = "https://purl.imsglobal.org/spec/lti/claim/"
Params = Mapping[str, str]


class LaunchRefused(Exception):
    """A launch that does not count, with a sentence for whoever launched."""

    def __init__(self, reason: str = "This launch does not count, or was used before.") -> None:
        super().__init__(reason)
        self.reason = reason


@dataclass(frozen=True, slots=True, kw_only=True)
class Login:
    """Where a browser is sent to sign in at its platform, and the state that it keeps."""

    address: str
    state: str


def login(params: Params, *, launch_address: str) -> Login:
    """The way to the platform that the browser says it comes from. Raises LaunchRefused for one not registered."""
    rows = LtiPlatform.objects.filter(issuer=params.get("iss", ""), active=True)
    if client_id := params.get("client_id"):
        rows = rows.filter(client_id=client_id)
    # With several clients and none named, no guess is made.
    found_rows = list(rows[:2])
    hint = params.get("login_hint", "")
    if len(found_rows) != 1 or not hint:
        raise LaunchRefused("This platform is not registered here. Ask the coordinator of your programme.")
    platform = found_rows[0]
    state = signing.dumps([str(platform.pk), token_urlsafe(16)], salt=STATE)
    asked = {
        "scope": "openid",
        "response_type": "id_token",
        "response_mode": "form_post",
        "prompt": "none",
        "client_id": platform.client_id,
        "redirect_uri": launch_address,
        "state": state,
        "nonce": nonce_of(state),
        "login_hint": hint,
    }
    if message := params.get("lti_message_hint"):
        asked["lti_message_hint"] = message
    joint = "&" if "?" in platform.login_address else "?"
    return Login(address=f"{platform.login_address}{joint}{urlencode(asked)}", state=state)


def nonce_of(state: str) -> str:
    return salted_hmac("lti nonce", state, algorithm="sha256").hexdigest()


def cookie_of(state: str) -> str:
    """The name of the cookie that keeps a state: several launches may be under way in one browser."""
    return f"lti-{sha256(state.encode()).hexdigest()[:16]}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """A token that counts: what of it is used, and nothing that names a person."""

    platform: LtiPlatform
    nonce: str
    deployment_id: str
    subject: str
    roles: tuple[str, ...]
    link_id: str
    custom: Mapping[str, Any]
    deep_link: Mapping[str, Any] | None
    line_item: str
    """Where the grade goes; empty where the platform takes none."""


def read(params: Params, *, cookies: Params) -> Message:
    """The message of a launch. Raises LaunchRefused."""
    state = params.get("state", "")
    if not state or cookies.get(cookie_of(state)) != state:
        raise LaunchRefused("This launch began in another browser, or too long ago.")
    try:
        platform_id, _ = signing.loads(state, salt=STATE, max_age=STATE_S)
    except signing.BadSignature:
        raise LaunchRefused("This launch began too long ago.") from None
    platform = LtiPlatform.objects.filter(pk=platform_id, active=True).first()
    if platform is None:
        raise LaunchRefused
    try:
        body = _Launch(params, platform).checked()
        return _message(body, platform, nonce_of(state))
    # What is read before the signature is anybody's: it may have any shape.
    except (
        LtiException,
        JWException,
        NotUsable,
        AttributeError,
        IndexError,
        KeyError,
        TypeError,
        ValueError,
    ) as refusal:
        logger.warning("A launch from %s was refused: %r", platform.pk, str(refusal)[:200])
        raise LaunchRefused from None


def _message(body: Mapping[str, Any], platform: LtiPlatform, nonce: str) -> Message:
    audience = body["aud"]
    if body.get("azp", platform.client_id) != platform.client_id or (isinstance(audience, list) and len(audience) > 1):
        raise LtiException("The token is for others too.")
    subject, link_id = body["sub"], (body.get(f"{CLAIM}resource_link") or {}).get("id", "")
    for text in (subject, link_id):
        if not isinstance(text, str) or len(text) > MOST_ID:
            raise LtiException("A subject or a link that is no text, or too long.")
    if body["nonce"] != nonce:
        raise LtiException("Another nonce.")
    deep = body[f"{CLAIM}message_type"] == "LtiDeepLinkingRequest"
    return Message(
        platform=platform,
        nonce=nonce,
        deployment_id=body[f"{CLAIM}deployment_id"],
        subject=subject,
        roles=tuple(str(role) for role in body[f"{CLAIM}roles"]),
        link_id=link_id,
        custom=dict(body.get(f"{CLAIM}custom") or {}),
        deep_link=body["https://purl.imsglobal.org/spec/lti-dl/claim/deep_linking_settings"] if deep else None,
        line_item=_line_item(body.get(GRADES_CLAIM) or {}),
    )


def _line_item(grades: Mapping[str, Any]) -> str:
    address = grades.get("lineitem")
    if not isinstance(address, str) or len(address) > MOST_ADDRESS or SCORE_SCOPE not in (grades.get("scope") or ()):
        return ""
    try:
        refuse_address(address, at="lineitem")
    except NotUsable:
        return ""
    return address


def registration_of(platform: LtiPlatform) -> Registration:
    """The platform as the library takes it, with this server's key."""
    key = own_key()
    made = Registration().set_issuer(platform.issuer).set_client_id(platform.client_id)
    made.set_auth_login_url(platform.login_address).set_auth_token_url(platform.token_address)
    made.set_key_set_url(platform.key_set_address)
    made.set_tool_private_key(key.private_pem).set_tool_public_key(key.public_pem)
    if platform.token_audience:
        made.set_auth_audience(platform.token_audience)
    return made


class _Params(Request):
    def __init__(self, params: Params) -> None:
        self._params = params

    def is_secure(self) -> bool:
        return True

    def get_param(self, key: str) -> str:
        return self._params.get(key, "")


class _Platforms(ToolConfAbstract[_Params]):
    """The one that the state is of."""

    def __init__(self, platform: LtiPlatform) -> None:
        self._platform = platform

    def check_iss_has_one_client(self, iss: str) -> bool:
        return False

    def check_iss_has_many_clients(self, iss: str) -> bool:
        return True

    def find_registration_by_issuer(self, iss: str, *args: Any, **more: Any) -> Registration:
        raise NotImplementedError

    def find_registration_by_params(self, iss: str, client_id: str, *args: Any, **more: Any) -> Any:
        right = (iss, client_id) == (self._platform.issuer, self._platform.client_id)
        return registration_of(self._platform) if right else None

    def find_deployment(self, iss: str, deployment_id: str) -> Deployment | None:
        raise NotImplementedError

    def find_deployment_by_params(
        self, iss: str, deployment_id: str, client_id: str, *args: Any, **more: Any
    ) -> Deployment | None:
        known = deployment_id in self._platform.deployment_ids
        return Deployment().set_deployment_id(deployment_id) if known else None


class _Launch(MessageLaunch[Any, Any, Any, Any]):
    def __init__(self, params: Params, platform: LtiPlatform) -> None:
        request = _Params(params)
        super().__init__(
            request,
            _Platforms(platform),
            session_service=SessionService(request),
            cookie_service=cast(Any, object()),  # asked for the state alone, which is checked here
            requests_session=PlatformSession(),
        )
        self.set_auto_validation(False)
        self.set_jwt_verify_options({"verify_aud": False, "require": ["exp", "iat", "nonce", "sub"]})

    def checked(self) -> Mapping[str, Any]:
        """The claims, once the library found nothing against them. State and nonce are not its affair."""
        self.validate_jwt_format().validate_registration().validate_jwt_signature()
        self.validate_deployment().validate_message()
        return self.get_launch_data()

    def _get_request_param(self, key: str) -> str:
        return str(self._request.get_param(key))

    def fetch_public_key(self, key_set_url: str) -> Any:
        """The platform's keys, asked for anew where none is the token's: platforms change them without a word."""
        cached = cache.get(key := f"lti-keys-{digest(key_set_url)}")
        if cached and self._jwt["header"].get("kid") in {each.get("kid") for each in cached["keys"]}:
            return cached
        try:
            keys = self._requests_session.get(key_set_url).json()
        except requests.RequestException as away:
            raise LtiKeyException(f"No keys of the platform: {type(away).__name__}") from None
        cache.set(key, keys, KEYS_KEPT_S)
        return keys
