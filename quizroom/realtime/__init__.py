"""Live connections: who is on the line, what they say, what they are told."""
