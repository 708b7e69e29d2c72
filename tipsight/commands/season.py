"""``tipsight season``: what a box lacks over a season, what to make, carry and leave at home."""

import json as as_json

import click

from tipsight import tables as own_tables
from tipsight.commands import COMMANDS
from tipsight.commands.asking import named_question
from tipsight.commands.parsing import Alone, Line, one_of, whole
from tipsight.commands.season_options import cores_option, season_of, tables_option, workers
from tipsight.commands.writing import progress
from tipsight.errors import Mistake, Mistakes

JOBS = ("gaps", "make", "carry", "idle")
MOST_MADE = 12
"""So many at the most are thought of for one winter (judgement)."""


def _run(
    job: str,
    floats: tuple[str, ...],
    swims: str,
    count: int,
    with_bank: bool,
    cores: int | None,
    tables: str | None,
    json: bool,
) -> str:
    """Return one job of a season, in words or as JSON."""
    if not floats and job != "make":
        why = "name the files of your floats, each a question that tells of one"
        raise Mistakes([Mistake("floats", "", why, f"tipsight season {job} mine.toml match")])
    from tipsight.output import season_form, season_words
    from tipsight.season import jobs, making
    from tipsight.season.served import served

    with own_tables.using(tables), workers(cores) as pool:
        season, box = season_of(swims), [named_question(name) for name in floats]
        tell = progress("swims looked at")
        called = [season_words.float_called(one, n) for n, one in enumerate(box)]
        form: object
        if job == "make":
            made = making.make(
                season, box, count, with_bank=with_bank, executor=pool, progress=tell
            )
            form, said = season_form.makings_form(made), season_words.makings_text(made, season)
        else:
            who = served(box, season, with_bank=with_bank, executor=pool, progress=tell)
            serves = who.with_bank
            if job == "gaps":
                gaps = jobs.gaps(box, season, serves, who.short_by)
                form, said = (
                    season_form.gaps_form(gaps),
                    season_words.gaps_text(gaps, season, called),
                )
            elif job == "carry":
                taken = jobs.carry(season, serves)
                form, said = (
                    season_form.carry_form(taken),
                    season_words.carry_text(taken, season, called),
                )
            else:
                rest = jobs.idle(serves)
                form, said = (
                    season_form.idle_form(rest),
                    season_words.idle_text(rest, season, called),
                )
    if json:
        whole_form = {"swims": season_form.swims_form(season), job: form}
        return as_json.dumps(whole_form, indent=2, allow_nan=False) + "\n"
    return said


run = click.command(
    "season", Line, help=f"{COMMANDS['season'][0].upper()}{COMMANDS['season'][1:]}."
)(_run)
run.params += [
    Alone(
        ["job"],
        "gaps: which swims no float passes; make: what to make; carry: the fewest floats to take; "
        "idle: those that no swim needs",
        metavar="JOB",
        type=one_of(JOBS),
    ),
    Alone(
        ["floats"],
        "files of your floats, each a question that tells of one; to make, none is needed",
        metavar="[FLOAT.toml ...]",
        nargs=-1,
        required=False,
    ),
    click.Option(
        ["--swims"],
        default="season",
        metavar="SEASON.toml",
        help="a file of swims with how often each is fished; 'season' is an invented one of 24, "
        "'ladder' is yards by water by what is behind by sky",
    ),
    click.Option(
        ["--count"],
        type=whole(1, MOST_MADE, 4),
        default="4",
        metavar="N",
        help="how many to make at the most; 4 if not told",
    ),
    click.Option(["--with-bank"], is_flag=True, help="count what can be done at the bank as well"),
    cores_option(),
    tables_option(),
    click.Option(["--json"], is_flag=True, help="print one JSON object, for programs"),
]
