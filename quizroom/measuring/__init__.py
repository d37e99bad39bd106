"""Measuring how much a server carries, side by side with a floor that knows nothing of reviews."""
