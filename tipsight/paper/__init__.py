"""Paper at true size, and the one file for the phone."""
