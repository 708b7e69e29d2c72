"""How the float rides. A number outside the range that is told for it raises OutOfRange."""
