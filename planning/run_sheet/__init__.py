"""The order of work of one canal as a finite graph, and walking it; the phone walks the same."""
