"""What the owner saw and wrote down, and what follows from it for his eyes and his waters."""
