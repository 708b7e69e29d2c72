"""``tipsight advise``: what to do now at the bank, what to fit at the bench, and why."""

import argparse
import json

from tipsight.commands.asking import Asked, add_question, asked, with_tables


def add_options(parser: argparse.ArgumentParser) -> None:
    """Add what this command takes.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    """
    form = parser.add_mutually_exclusive_group()
    form.add_argument("--full", action="store_true", help="say everything that was worked out")
    form.add_argument("--json", action="store_true", help="print one JSON object, for programs")
    form.add_argument(
        "--question",
        action="store_true",
        help="print the whole question as TOML, to edit and keep",
    )
    add_question(parser)


def run(given: argparse.Namespace) -> str:
    """Return the answer in the form that was asked for.

    Parameters
    ----------
    given : argparse.Namespace
        What the parser read.

    Returns
    -------
    str
        To be printed.

    Raises
    ------
    Mistakes
        With everything in the question that is to be mended.
    """
    return with_tables(given, lambda: _said(given, asked(given, "advise")))


def _said(given: argparse.Namespace, put: Asked) -> str:
    from tipsight.inputs.settle import settle

    case = settle(put.question)
    if given.question:
        from tipsight.inputs.toml_text import write

        return write(put.question, case).rstrip("\n") + "\n"
    from tipsight.advice.advise import advise_case

    answer = advise_case(case, dict(put.question.told()))
    if given.json:
        from tipsight.output.json_form import json_form

        return json.dumps(json_form(answer), indent=2, ensure_ascii=True, allow_nan=False) + "\n"
    from tipsight.output.text import text

    return text(answer, given.full, put.start, put.given)
