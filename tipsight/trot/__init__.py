"""The whole trot: each stretch of it with its own water, and the tip that does on all of them."""
