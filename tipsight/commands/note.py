"""``tipsight note``: where a tip went by the river, kept to learn one's eyes from."""

from datetime import date
from typing import Any

import click

from tipsight.commands.asking import Asked, recording
from tipsight.commands.kept import FAR, box_file, keep, on_day, owner_of, told_again, whose
from tipsight.errors import Mistake, Mistakes

EXAMPLE = "tipsight note mine.toml --went 34yd"


@recording
@click.option("--went", type=FAR, metavar="LENGTH", help="how far off it went")
@click.option("--followed", type=FAR, metavar="LENGTH", help="how far you could follow it; it had not gone")
@click.option("--not-seen", "lost", type=FAR, metavar="LENGTH", help="how far off it could not be seen")
@click.option("--last", is_flag=True, help="of the question that was asked last")
@on_day
@whose
@box_file
def run(
    put: Asked,
    went: float | None,
    followed: float | None,
    lost: float | None,
    last: bool,
    day: date | None,
    who: str,
    box: str | None,
) -> str:
    """Keep the note, and return what is known now."""
    saw = {"went": went, "followed": followed, "not seen": lost}
    told = {key: far for key, far in saw.items() if far is not None}
    mistakes = []
    if len(told) != 1:
        why = "say one of --went, --followed and --not-seen"
        mistakes.append(Mistake("note", "", why, EXAMPLE))
    if last and not put.untold:
        why = "it stands for the whole question; leave the rest out"
        mistakes.append(Mistake("--last", "", why, "tipsight note --last --went 34yd"))
    if not last and put.untold:
        why = "say of which swim and tip, by its file or as you asked it, or --last"
        mistakes.append(Mistake("note", "", why, EXAMPLE))
    if mistakes:
        raise Mistakes(mistakes)
    question = told_again(box) if last else put.question
    from tipsight.inputs.settle import settle

    settle(question)  # a note that cannot be answered is not kept
    kept = {"saw": next(iter(told)), "range_m": next(iter(told.values()))}
    asked = dict(question.told())
    also: dict[str, Any] = {key: asked[key] for key in ("age", "sight") if key in asked}
    number = keep(box, "note", who, day, {**kept, **also, "question": asked})
    from tipsight.output.learnt_words import eyes
    from tipsight.output.learnt_words import kept as said

    return said(number, asked if last else None) + eyes(owner_of(box, who))
