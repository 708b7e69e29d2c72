"""What is kept: one SQLite file, with nothing in it that can be worked out again."""
