"""What the tip costs in shot."""
