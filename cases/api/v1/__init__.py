"""Version 1 of the API: once published it is only added to."""
