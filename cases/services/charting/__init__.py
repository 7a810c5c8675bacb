"""Cases, canals, readings and marks: what is known of a tooth."""
