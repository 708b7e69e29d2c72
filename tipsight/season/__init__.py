"""The swims of a season: which float serves which, what to make, carry and leave at home."""
