"""Practice on canals with a hidden truth: exercises, and tasks that a supervisor sets."""
