"""Examines a deployment: whether a server can run here, and whether phones will reach it."""
