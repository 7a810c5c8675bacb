"""All that is kept of a programme's cases, as tables for other systems."""
