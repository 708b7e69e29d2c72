"""The commands, one module each, whose ``run`` is its line on click; which there are, without it."""

COMMANDS = {
    "advise": "what to do now at the bank, what to fit at the bench, and why",
    "shot": "the bench's load job alone: shot to each band, shot left, shot list",
    "page": "the same answer by tapping, in a browser on this machine",
    "sheet": "the bench sheet: tip and float at true size, coats, shot to each band (PDF)",
    "card": "cards for the box lid (shotting, bank), the wall, and the fence for your eyes (PDF)",
    "view": "the view from the bank, now and as advised (PNG), or a drawing (SVG)",
    "paint": "a paint of your own from a colour or a measured spectrum, into your tables",
    "day": "the light of one day on one swim, and which tip to have on when",
    "trot": "a trot whose water changes on its way: yard by yard, and the tip for all of it",
    "eyes": "your own eyes, from a fence card and from what you noted by the river",
    "note": "where a tip went by the river, kept to learn your eyes from",
    "water": "how much one of your waters boils, from how often the float dips there",
    "box": "your floats in one file: which for this swim, what to carry, what to make",
    "sweep": "a whole season answered, one row of a table for each swim (CSV)",
    "pocket": "all the answers of one float in one file for the phone (HTML)",
}
"""Each command with what it does; its module here has the same name."""
