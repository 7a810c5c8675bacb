"""Events of the work at the chair, and what is kept beside them."""
