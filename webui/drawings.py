"""Drawings of the page: those of `tipsight.pictures.svg`, by the names that the templates use."""

from tipsight.pictures.svg import float_, point_words, seen_against_sunk, stairs, swatches, tip

__all__ = ["float_", "point_words", "seen_against_sunk", "stairs", "swatches", "tip"]
