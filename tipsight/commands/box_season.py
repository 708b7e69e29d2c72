"""``tipsight box gaps``, ``make``, ``carry`` and ``idle``: your floats against a season of swims."""

import json as as_json
from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

import click

from tipsight import tables as own_tables
from tipsight.box import floats, keeping
from tipsight.box.floats import Kept
from tipsight.commands.asking import who_option
from tipsight.commands.box_shared import box_option, json_option, there
from tipsight.commands.kept import fished_by
from tipsight.commands.parsing import Alone, Line, whole
from tipsight.commands.season_options import cores_option, season_of, tables_option, workers
from tipsight.commands.writing import progress
from tipsight.errors import Mistake, Mistakes

MOST_MADE = 12
"""So many at the most are thought of for one winter (judgement)."""


@dataclass(frozen=True)
class _Put:
    """What a job is asked of: the floats of a box against a season."""

    kept: Sequence[Kept]
    swims: str
    with_bank: bool
    cores: int | None
    tables: str | None
    json: bool
    who: str | None
    box: str | None


def _job(job: str, put: _Put, count: int = 0) -> str:
    """Return one job of a season, in words or as JSON."""
    from tipsight.output import float_words, season_form, season_words
    from tipsight.season import jobs, making
    from tipsight.season.served import served

    numbers = [one.number for one in put.kept]
    called = [f"float {one.number}, {float_words.float_line(one.entry)}" for one in put.kept]
    with own_tables.using(put.tables), workers(put.cores) as pool:
        season = fished_by(season_of(put.swims), put.box, put.who)
        box = [one.question() for one in put.kept]
        how: dict[str, Any] = {
            "with_bank": put.with_bank,
            "executor": pool,
            "progress": progress("parts of the work done"),
        }
        form: object
        if job == "make":
            made = making.make(season, box, count, **how)
            form, said = season_form.makings_form(made), season_words.makings_text(made, season)
        else:
            who = served(box, season, **how)
            serves = who.with_bank
            if job == "gaps":
                gaps = jobs.gaps(box, season, serves, who.short_by)
                heavy = jobs.heavy_only(serves, who.shot_share)
                form = season_form.gaps_form(gaps, heavy, numbers)
                said = season_words.gaps_text(gaps, season, called, heavy)
            elif job == "carry":
                taken = jobs.carry(box, season, serves)
                form = season_form.carry_form(taken, numbers)
                said = season_words.carry_text(taken, season, called)
            else:
                rest = jobs.idle(box, serves, who.level, who.shot_share)
                form = season_form.idle_form(rest, numbers)
                said = season_words.idle_text(rest, season, called)
    if put.json:
        whole_form = {"swims": season_form.swims_form(season), job: form}
        return as_json.dumps(whole_form, indent=2, allow_nan=False) + "\n"
    return said


def _of_box(job: str, box: str | None, **values: Any) -> str:
    with keeping.opened(there(box)) as one:
        kept = floats.listed(one)
    if not kept:
        why = "there is no float in it yet; put one in first"
        raise Mistakes([Mistake("--box", str(there(box)), why, "tipsight box put")])
    return _job(job, _Put(kept, box=box, **values))


def _make(count: int, box: str | None, **values: Any) -> str:
    """Return what to make; without a box everything is open."""
    path = keeping.place(box)
    if box is not None or path.exists():
        with keeping.opened(there(box)) as one:
            kept = floats.listed(one)
    else:
        kept = ()
    return _job("make", _Put(kept, box=box, **values), count)


SAYS = {
    "gaps": "Which swims no float of yours passes, the nearest, and what would cure it.",
    "carry": "The fewest floats that serve every swim that can be served, and the best with one fewer.",
    "idle": "Which floats no swim needs, as another is as good in all.",
}
lines = {job: click.command(job, Line, help=says)(partial(_of_box, job)) for job, says in SAYS.items()}
gaps, carry, idle = lines["gaps"], lines["carry"], lines["idle"]
make = click.command(
    "make", Line, help="What to make of your stock, to close the most of what is open."
)(_make)
make.params += [
    Alone(
        ["count"],
        "how many to make at the most, 4 if not told",
        metavar="[N]",
        type=whole(1, MOST_MADE, 4),
        required=False,
        default="4",
    )
]
for line in (gaps, make, carry, idle):
    line.params += [
        click.Option(
            ["--swims"],
            default="season",
            metavar="SEASON.toml",
            help="a file of swims with how often each is fished; 'season' is an invented one of 24, "
            "'ladder' is yards by water by what is behind by sky",
        ),
        click.Option(["--with-bank"], is_flag=True, help="count what can be done at the bank as well"),
        cores_option(),
        tables_option(),
        json_option(),
        box_option(),
        who_option(),
    ]
