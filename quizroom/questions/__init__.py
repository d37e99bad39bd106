"""Items: making them from the knowledge base, dealing them, judging typed answers."""
