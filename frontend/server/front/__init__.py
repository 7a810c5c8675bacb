"""What stands between the network and Django: a body is read before a worker takes its request, and each lane of
requests has workers of its own. Knows HTTP, and nothing of teeth.
"""
