"""The composition root: settings, root addresses, server. The only place that knows all three packages."""
