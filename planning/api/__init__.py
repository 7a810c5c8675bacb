"""The planner over HTTP: computing alone, no tables, nothing stored."""
