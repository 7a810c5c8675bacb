"""The life of a plan: its moves, what it is worth now, what changed, what may be released."""
