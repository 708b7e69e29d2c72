"""``tipsight box rank``: which of your floats for this swim."""

import json as as_json

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.box_shared import floats_in
from tipsight.commands.parsing import whole
from tipsight.commands.writing import progress

MOST = 200
"""So many are looked at closely at the most; each takes a few milliseconds."""


@command
@click.option(
    "--most",
    type=whole(1, MOST, 20),
    default=20,
    metavar="N",
    help="how many floats to tell, 20 if not told",
)
@click.option("--json", is_flag=True, help="print one JSON object, for programs")
def run(put: Asked, most: int, json: bool) -> str:
    """Return your floats for a swim: those that pass first, then by least trouble, sight and bites."""
    from tipsight.output import rank_words
    from tipsight.season.ranking import rank

    kept = floats_in(put.box)
    asked = [one.question() for one in kept]
    found = rank(put.question, asked, most=most, progress=progress("kinds of float looked at"))
    put.keep()
    if json:
        return as_json.dumps(rank_words.form(found, kept), indent=2, ensure_ascii=False) + "\n"
    return rank_words.text(found, kept, most)
