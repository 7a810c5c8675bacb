"""Images in and out of storage, and what of them is gone for good."""
