"""Light that reaches the tip and the water behind it."""
