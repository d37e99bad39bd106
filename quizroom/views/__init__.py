"""The one door for secrets: the only way from the state of a room to the wire."""
