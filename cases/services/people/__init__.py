"""Signing in, one-time codes, programmes and their figures, what people are told of."""
