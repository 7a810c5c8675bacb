"""Every read beyond one row, and what a person can see at all."""
