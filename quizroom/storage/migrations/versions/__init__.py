"""One module for each change; its number is its place in the order, for ever."""
