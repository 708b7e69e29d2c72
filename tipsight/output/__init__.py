"""What the angler reads."""
