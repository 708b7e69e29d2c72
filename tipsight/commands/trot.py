"""``tipsight trot``: a trot whose water changes, yard by yard, and the tip that does on all of it."""

import json as as_json

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.writing import write


@command
@click.option("--json", is_flag=True, help="print one JSON object, for programs")
@click.option("-o", "--out", metavar="FILE", help="draw it to a file, too (SVG)")
def run(put: Asked, json: bool, out: str | None) -> str:
    """Return the whole trot, as its question's --trot tells of it."""
    from tipsight.output import trot_words
    from tipsight.trot.along import along

    found = along(put.question)
    put.keep()
    if out:
        from tipsight.pictures import trot_strip

        return write(out, trot_strip.drawing(found).alone().encode(), "the whole trot")
    if json:
        return as_json.dumps(trot_words.form(found), indent=2, allow_nan=False) + "\n"
    return trot_words.text(found)
