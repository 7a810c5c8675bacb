"""The Django app that serves the phone front end."""

from django.apps import AppConfig


class FrontendConfig(AppConfig):
    name = "frontend"

    def ready(self) -> None:
        # Registers the checks of the settings.
        from frontend.server import checks  # noqa: F401
