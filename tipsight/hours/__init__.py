"""A day on one swim: its light by the quarter of an hour, and which tip to have on when."""
