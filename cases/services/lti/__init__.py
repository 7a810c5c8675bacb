"""LTI 1.3: platforms of a programme's courses, launches from them, links that they keep."""
