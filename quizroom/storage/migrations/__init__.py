"""Changes of the tables, one after the other; `quizroom.storage.upgrading` runs them at the start."""
