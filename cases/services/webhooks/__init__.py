"""Webhooks: kept by whoever is told, laid out from the feed, sent by workers under a lease."""
