"""Which tip, and why."""
