"""The wire: messages, how they are read, and what they mean."""
