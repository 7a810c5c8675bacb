"""Who may do what, and who tells what."""
