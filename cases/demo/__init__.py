"""The invented programmes of the demonstration."""
