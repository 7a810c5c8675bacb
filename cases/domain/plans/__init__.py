"""The life of a plan: its moves, its status, what changed between versions, what may be released."""
