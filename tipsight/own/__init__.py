"""Rows of one's own tables made from what one has: a paint from a colour or a measured spectrum."""
