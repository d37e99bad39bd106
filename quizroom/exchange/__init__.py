"""Content and results in the file formats of other programs."""
