"""Pictures of what was worked out: the view from the bank, and drawings to scale."""
