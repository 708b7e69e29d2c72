"""What the angler says, and what it comes to in numbers."""
