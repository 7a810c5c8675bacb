"""The record as frozen values, by what each part is about."""
