"""What the first screen draws, by one short name each."""

from tipsight.pictures.pair import pair
from tipsight.pictures.strips import axis, patterns, shown, strip, swatch

grades = shown

__all__ = ["axis", "grades", "pair", "patterns", "strip", "swatch"]
