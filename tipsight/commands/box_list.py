"""``tipsight box list`` and ``show``: what is in the box, and all that one float ever was."""

import json as as_json

import click

from tipsight.box import floats, keeping
from tipsight.commands.box_shared import NUMBER, box_option, floats_in, json_option, there
from tipsight.commands.parsing import Alone, Line


def _list(words: tuple[str, ...], dropped: bool, json: bool, box: str | None) -> str:
    """Return the floats in the box, a line for each, or those in which all of the words stand."""
    from tipsight.output import float_words

    found = floats_in(box, dropped=dropped)
    wanted = [word.casefold() for word in " ".join(words).split()]
    if wanted:
        found = tuple(
            k for k in found if all(w in float_words.called(k).casefold() for w in wanted)
        )
    if json:
        form = {"floats": [float_words.form(kept) for kept in found]}
        return as_json.dumps(form, indent=2, ensure_ascii=False) + "\n"
    return float_words.table(found, searched=bool(wanted))


def _show(number: int, json: bool, box: str | None) -> str:
    """Return one float with its history."""
    from tipsight.output import float_words

    with keeping.opened(there(box)) as one:
        states = floats.history(one, number)
    if json:
        form = {
            "float": float_words.form(states[-1]),
            "was": [float_words.form(k) for k in states],
        }
        return as_json.dumps(form, indent=2, ensure_ascii=False) + "\n"
    return float_words.shown(states)


run = click.command("list", Line, help="What is in the box.")(_list)
run.params += [
    Alone(
        ["words"],
        "only floats in whose line all of these words stand, such as 'avon tray'",
        metavar="[WORDS]",
        nargs=-1,
        required=False,
    ),
    click.Option(["--dropped"], is_flag=True, help="list those too that were dropped"),
    json_option(),
    box_option(),
]
show = click.command("show", Line, help="One float, and all that it ever was.")(_show)
show.params += [
    Alone(["number"], "the number of the float", metavar="NUMBER", type=NUMBER),
    json_option(),
    box_option(),
]
