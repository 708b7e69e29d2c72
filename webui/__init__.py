"""The page: the same answer by tapping."""
