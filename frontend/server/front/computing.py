"""Loaded in every room: from then on its process estimates depths by the kernel that was chosen."""

from frontend.server import kernel

kernel.take()
