"""Django's settings. One file: what differs between places is an environment variable (env.py), with a safe default."""

from __future__ import annotations

from cases.api.deprecation import CHANGES
from cases.api.oauth import server
from cases.api.security import SECURITY_SCHEMES
from frontend.server import env, files, policies
from frontend.server.env import Environment
from frontend.server.front import cross_origin

ENVIRONMENT = Environment()
PRODUCTION = ENVIRONMENT.production

SECRET_KEY = ENVIRONMENT.key()
# Never on: an error page with local values has no place near records, and Django's own pages are not ours.
DEBUG = False
# Until it is told otherwise the server answers this machine only.
ALLOWED_HOSTS = ENVIRONMENT.allowed_hosts or ["localhost", "127.0.0.1", "[::1]"]

INSTALLED_APPS = [
    "frontend",
    "cases",
    "oauth2_provider",
    "rest_framework",
    "drf_spectacular",
    "drf_spectacular_sidecar",
    "corsheaders",
    "csp",
    "django.contrib.admin",
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
]

MIDDLEWARE = [
    "frontend.server.front.request_ids.RequestIdMiddleware",
    "frontend.server.health.HealthMiddleware",
    "django.middleware.security.SecurityMiddleware",
    # Above the file server, which answers by itself: its pages need the policy too.
    "frontend.server.policies.PolicyMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    # A plan is a quarter of a megabyte of JSON, a tenth of that compressed: the connection is often bad.
    "frontend.server.compression.TextGZip",
    # Above all that may answer or refuse by itself: pages of other origins read refusals too.
    "corsheaders.middleware.CorsMiddleware",
    *(["frontend.server.queries.QueriesMiddleware"] if ENVIRONMENT.show_queries else []),
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "cases.api.deprecation.DeprecationMiddleware",
    "cases.api.reading.ReadingMiddleware",
]

ROOT_URLCONF = "frontend.server.urls"
# The API's addresses are exact; a redirect would lose the body of what was sent.
APPEND_SLASH = False
TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
            ]
        },
    }
]

# --- records ---
DATABASES = {"default": env.database()}
# The library's own 21 steps took three times as long as all else that a new database is made of.
MIGRATION_MODULES = {"oauth2_provider": "cases.migrations.oauth2_provider"}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"
# Each service opens its own transaction. Around every request, SQLite would take the write lock even to read.
ATOMIC_REQUESTS = False

# --- people ---
AUTH_USER_MODEL = "cases.Person"
AUTH_PASSWORD_VALIDATORS = [
    {"NAME": "django.contrib.auth.password_validation.UserAttributeSimilarityValidator"},
    {"NAME": "django.contrib.auth.password_validation.MinimumLengthValidator", "OPTIONS": {"min_length": 12}},
    {"NAME": "django.contrib.auth.password_validation.CommonPasswordValidator"},
    # Judges none: Django tells validators when a password was changed.
    {"NAME": "cases.services.people.passwords.EndsWhatWasOpened"},
]
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_SAMESITE = "Lax"
SESSION_COOKIE_SECURE = PRODUCTION
CSRF_COOKIE_SAMESITE = "Lax"
CSRF_COOKIE_SECURE = PRODUCTION
# The page reads the token from its cookie before each send: it turns at sign-in.
CSRF_COOKIE_HTTPONLY = False

# --- transport ---
SECURE_SSL_REDIRECT = PRODUCTION
SECURE_HSTS_SECONDS = 31_536_000 if PRODUCTION else 0
SECURE_HSTS_INCLUDE_SUBDOMAINS = PRODUCTION
SECURE_REFERRER_POLICY = "same-origin"
SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https") if ENVIRONMENT.behind_proxy else None
X_FRAME_OPTIONS = "DENY"
CONTENT_SECURITY_POLICY = {"DIRECTIVES": policies.STRICT}
# A plan of eight canals with all its readings is some tens of kilobytes.
DATA_UPLOAD_MAX_MEMORY_SIZE = 1_000_000

# --- files ---
STATIC_URL = "/static/"
FRONTEND_DIST = env.ROOT / "frontend" / "dist"
# Files of the administration and the API viewer are served from their packages: nothing to collect before a start.
WHITENOISE_USE_FINDERS = True
WHITENOISE_AUTOREFRESH = False
# Missing only before the first build; the shell's view then says so.
WHITENOISE_ROOT = FRONTEND_DIST if FRONTEND_DIST.is_dir() else None
WHITENOISE_MIMETYPES = {".webmanifest": "application/manifest+json"}
WHITENOISE_IMMUTABLE_FILE_TEST = files.is_immutable
WHITENOISE_ADD_HEADERS_FUNCTION = files.add_headers
STORAGES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "images": env.image_storage(),
    "staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"},
}

# --- images ---
# A phone's camera at its finest, as it comes from the phone.
IMAGE_MOST_BYTES = 32_000_000
IMAGE_MOST_PX = 50_000_000
IMAGE_LONGEST_SIDE_PX = 12_000
# Of one part of an upload; a thin line gets a part through before it breaks.
IMAGE_MOST_PART_BYTES = 4_000_000
# What reading one image may take; beyond, it is refused.
IMAGE_READ_COMPUTING_SECONDS = 10
IMAGE_READ_MEMORY_BYTES = 1_000_000_000
# By the clock; beyond, it is for another time.
IMAGE_READ_SECONDS = 15

# --- notifications ---
# True lets a push service be plain HTTP on this machine: for tests.
PUSH_HTTP_HERE = False

# --- webhooks ---
WEBHOOKS_INSIDE = ENVIRONMENT.webhooks_inside
WEBHOOKS_CA_FILE = ENVIRONMENT.webhooks_ca_file
# --- courses of other platforms ---
# True lets a platform be plain HTTP on this machine: for tests.
LTI_HTTP_HERE = False

# --- words and times ---
LANGUAGE_CODE = "en-gb"
USE_I18N = False
TIME_ZONE = "UTC"
USE_TZ = True

# --- API ---
REST_FRAMEWORK = {
    "DEFAULT_AUTHENTICATION_CLASSES": ["cases.api.bearer.BearerKey", "frontend.server.sign_in.SignedInSession"],
    "DEFAULT_PERMISSION_CLASSES": ["rest_framework.permissions.IsAuthenticated"],
    "DEFAULT_RENDERER_CLASSES": ["rest_framework.renderers.JSONRenderer"],
    "DEFAULT_PARSER_CLASSES": ["planning.api.parsing.BoundedJSONParser"],
    # By lane (front/lanes.py), and of all that is asked with a key: how often somebody signed in may ask, and all
    # others from one address together.
    "DEFAULT_THROTTLE_RATES": {
        "description": "120/min",
        "computing": "120/min",
        "exports": "240/min",
        "images": "600/min",
        "sign-in": "240/min",
        "launches": "240/min",
        "keys": "1200/min",
    },
    "DEFAULT_SCHEMA_CLASS": "cases.api.schema.OperationSchema",
    "EXCEPTION_HANDLER": "cases.api.problems.handler",
    "TEST_REQUEST_DEFAULT_FORMAT": "json",
}
# Pages of these origins may ask with a key; no cookie of ours goes with what they ask.
CORS_ALLOWED_ORIGINS = ENVIRONMENT.cors_origins
# A page that acts for people trades its code for a token, and gives tokens up, itself.
CORS_URLS_REGEX = r"^/(api/(v1|fhir)|oauth/(token|revoke))(/|$)"
CORS_ALLOW_HEADERS = ("authorization", "content-type", "idempotency-key", "if-match", "if-none-match", "x-request-id")
CORS_EXPOSE_HEADERS = cross_origin.EXPOSED
SPECTACULAR_SETTINGS = {
    "TITLE": "Fourth Canal",
    "DESCRIPTION": (
        "Planning of root-canal instrumentation for training: computing alone, or the whole flow from a case to an "
        "approved plan. It supports, and does not replace, the supervising licensed clinician, the maker's "
        "instructions and local rules. Patients are aliases; no field takes a real identity. Lengths are in "
        "millimetres from the canal's reference point, angles in degrees, times in UTC."
    ),
    "LICENSE": {"name": "All rights reserved", "identifier": "LicenseRef-All-Rights-Reserved"},
    "VERSION": "1.1.0",
    "EXTERNAL_DOCS": {"url": CHANGES, "description": "What changed, and how long something is kept that goes."},
    "OAS_VERSION": "3.1.1",
    "SERVERS": [{"url": "/", "description": "Where this description lies."}],
    "SCHEMA_PATH_PREFIX": "/api/v1",
    "SERVE_INCLUDE_SCHEMA": False,
    "SERVE_PERMISSIONS": ["rest_framework.permissions.AllowAny"],
    "APPEND_COMPONENTS": {"securitySchemes": SECURITY_SCHEMES},
    "COMPONENT_SPLIT_REQUEST": True,
    "WEBHOOKS": ["cases.api.v1.webhook_messages.CHANGED", "cases.api.v1.webhook_messages.TEST"],
    "POSTPROCESSING_HOOKS": [
        "cases.api.v1.webhook_messages.described",
        "cases.api.enum_names.named",
        "cases.api.words.described",
        "frontend.server.front.described.of_the_door",
        "cases.api.refusals.described",
        "cases.api.recorded.shown",
        "cases.api.deprecation.described",
    ],
    # The page reads the token from its cookie before each send, as the app does: it turns at sign-in.
    "SWAGGER_UI_SETTINGS": """{
        deepLinking: true,
        // All operations with all schemas at once would be minutes of a phone's time: what is opened is drawn.
        docExpansion: 'none',
        defaultModelsExpandDepth: -1,
        requestInterceptor: (request) => {
            const token = document.cookie.match(/csrftoken=([^;]+)/)
            if (token) request.headers['X-CSRFToken'] = token[1]
            return request
        },
    }""",
    "SWAGGER_UI_DIST": "SIDECAR",
    "SWAGGER_UI_FAVICON_HREF": "SIDECAR",
}

# --- clients of OAuth 2 ---
TABLES = ("APPLICATION", "GRANT", "ACCESS_TOKEN", "REFRESH_TOKEN", "ID_TOKEN")
OAUTH2_PROVIDER_APPLICATION_MODEL = "cases.Client"
# The library's own; what writes migrations asks for each by its setting.
OAUTH2_PROVIDER_ACCESS_TOKEN_MODEL = "oauth2_provider.AccessToken"  # noqa: S105 - a model
OAUTH2_PROVIDER_REFRESH_TOKEN_MODEL = "oauth2_provider.RefreshToken"  # noqa: S105 - a model
OAUTH2_PROVIDER_ID_TOKEN_MODEL = "oauth2_provider.IDToken"  # noqa: S105 - a model
OAUTH2_PROVIDER_GRANT_MODEL = "oauth2_provider.Grant"
OAUTH2_PROVIDER_DEVICE_GRANT_MODEL = "oauth2_provider.DeviceGrant"
OAUTH2_PROVIDER = {
    "OAUTH2_SERVER_CLASS": "cases.api.oauth.server.OfferedServer",
    "OAUTH2_VALIDATOR_CLASS": "cases.api.oauth.validator.Validator",
    "SCOPES_BACKEND_CLASS": "cases.api.oauth.scopes.ClientScopes",
    "ACCESS_TOKEN_GENERATOR": "cases.api.oauth.server.access_token",
    "REFRESH_TOKEN_GENERATOR": "cases.api.oauth.server.refresh_token",
    "OAUTH2_GRANT_TYPES_SUPPORTED": server.GRANTS,
    "OAUTH2_RESPONSE_TYPES_SUPPORTED": server.RESPONSES,
    "OAUTH2_TOKEN_ENDPOINT_AUTH_METHODS_SUPPORTED": ["client_secret_basic", "client_secret_post", "none"],
    "AUTHORIZATION_CODE_EXPIRE_SECONDS": 60,
    "ACCESS_TOKEN_EXPIRE_SECONDS": 900,
    # Since a refresh token was used last: a term's holidays.
    "REFRESH_TOKEN_EXPIRE_SECONDS": 30 * 86_400,
    # One that comes a second time ends all that came of the same code (RFC 9700, 4.14.2).
    "REFRESH_TOKEN_REUSE_PROTECTION": True,
    "COMPLIANT_BCP_RFC9700_IMPLICIT_GRANT": True,
    "COMPLIANT_BCP_RFC9700_PASSWORD_GRANT": True,
    "COMPLIANT_BCP_RFC9700_PKCE_METHOD": True,
    "COMPLIANT_BCP_RFC9700_ACCESS_TOKEN_TRANSPORT": True,
    "COMPLIANT_BCP_RFC9700_AUTHZ_RESPONSE_ISS": True,
    "COMPLIANT_BCP_RFC9700_TOKEN_STORAGE": True,
    **{f"{kind}_ADMIN_CLASS": "cases.admin.LookedAt" for kind in TABLES},
}

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "filters": {"request": {"()": "frontend.server.front.request_ids.RequestIdFilter"}},
    "formatters": {"line": {"format": "{asctime} {levelname} {name} {request_id} {message}", "style": "{"}},
    "handlers": {
        "console": {"class": "logging.StreamHandler", "filters": ["request"], "formatter": "line"},
        # Of a logger without any handler Python prints what it has itself.
        "nowhere": {"class": "logging.NullHandler"},
    },
    # A wrong host is answered with 400; a page of traceback for each would hide what matters.
    "loggers": {
        "django.security.DisallowedHost": {"handlers": ["nowhere"], "propagate": False},
        # An answer of 4xx is told to the one who asked.
        "django.request": {"level": "ERROR"},
        # They tell every table of a typeface that they cut.
        "fontTools": {"level": "WARNING"},
        "fpdf": {"level": "WARNING"},
    },
    "root": {"handlers": ["console"], "level": ENVIRONMENT.log_level},
}
