"""What can be told of the work: the kinds of events and what each one carries."""
