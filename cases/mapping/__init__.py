"""Rows to values and back, and the fold of a case's events: the one place where tables and values meet."""
