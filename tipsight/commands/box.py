"""``tipsight box``: the floats that you have, in one file; each thing that it does is a line of its own."""

from tipsight.commands.parsing import Part

PARTS = {
    "put": Part("box_put", "put floats in, told in one line"),
    "list": Part("box_list", "what is in the box"),
    "show": Part("box_list:show", "one float, and all that it ever was"),
    "change": Part("box_change", "tell a float otherwise: a repaint, a new tip, one lost"),
    "drop": Part("box_change:drop", "take floats out of the box"),
    "back": Part("box_change:back", "bring dropped floats in again"),
    "rank": Part("box_rank", "which of them for this swim, as each is or with the least that is to be done"),
    "gaps": Part("box_season:gaps", "which swims of a season none of them passes, and what would cure it"),
    "make": Part("box_season:make", "which floats to make, to close the most of what is open"),
    "carry": Part("box_season:carry", "the fewest to take along for a season or a day"),
    "idle": Part("box_season:idle", "which of them no swim needs"),
    "cards": Part("box_cards", "a shotting card for each, four on a page (PDF)"),
    "take-in": Part("box_table", "take in a table (CSV) typed in any spreadsheet"),
    "write-out": Part("box_table:write_out", "write the box out as such a table"),
    "copy": Part("box_file", "copy the box, safe while it is in use"),
    "demo": Part("box_file:demo", "fill a box with 240 invented floats"),
}
"""What it does, and in which module of ``commands`` its line is."""
