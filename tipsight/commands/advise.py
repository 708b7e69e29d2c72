"""``tipsight advise``: what to do now at the bank, what to fit at the bench, and why."""

import json as as_json

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.parsing import one_of
from tipsight.errors import Mistake, Mistakes
from tipsight.inputs.spoken import ANGLERS, Spoken


@command
@click.option("--full", is_flag=True, help="say everything that was worked out")
@click.option("--json", is_flag=True, help="print one JSON object, for programs")
@click.option(
    "--question", is_flag=True, help="print the whole question as TOML, to edit and keep"
)
@click.option(
    "--units",
    type=one_of(("yards", "metres")),
    default="yards",
    metavar="UNITS",
    help="the units in which you are told: yards, or metres",
)
def run(put: Asked, full: bool, json: bool, question: bool, units: str) -> str:
    """Return the answer in the form that was asked for."""
    _check_alone({"--full": full, "--json": json, "--question": question})
    from tipsight.inputs.settle import settle

    metres = units == "metres"
    case = settle(put.question, Spoken("m", "m") if metres else ANGLERS)
    if question:
        from tipsight.inputs.toml_text import write

        return write(put.question, case).rstrip("\n") + "\n"
    from tipsight.advice.advise import advise_case

    answer = advise_case(case, dict(put.question.told()))
    put.keep()
    from tipsight.output.measures import ANGLER, Reader

    reader = Reader("m", inches=False) if metres else ANGLER
    if json:
        from tipsight.output.json_form import json_form

        said = as_json.dumps(
            json_form(answer, reader), indent=2, ensure_ascii=True, allow_nan=False
        )
        return said + "\n"
    from tipsight.output.text import text

    start = f"{put.start} --units metres" if metres else put.start
    return text(answer, full, start, dict(put.given), reader)


def _check_alone(forms: dict[str, bool]) -> None:
    first, *others = [name for name, asked in forms.items() if asked] or [""]
    if others:
        why = f"it does not go together with {first}; leave one of them out"
        raise Mistakes([Mistake(others[0], "", why, others[0])])
