"""A whole review as one file: written for its host, read with every doubt, told by a published schema."""
