"""The door for courses of other platforms (LTI 1.3): login, launch, choosing an assignment, the public key.

Outside the app: a window of a course opens here, and goes on to the app's address of the assignment.
"""
