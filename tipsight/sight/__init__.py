"""What the eye makes of the tip."""
