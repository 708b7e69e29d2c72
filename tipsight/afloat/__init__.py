"""How the float rides."""
