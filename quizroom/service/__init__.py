"""What the program does for its callers, over ports that storage and time fill."""
