"""``tipsight shot``: the bench's load job alone, with no water and no light in it."""

import click

from tipsight.commands.asking import Asked, command, named_question


@command
@click.option(
    "--was",
    metavar="OLD.toml",
    help="the float as it was, a file or an invented swim: tells why it takes more or less now",
)
def run(put: Asked, was: str | None) -> str:
    """Return what the float takes to each mark of its tip, and the shot for it."""
    from tipsight.inputs.settle import settle
    from tipsight.output.shotting import shotting

    case = settle(put.question)
    put.keep()
    if was is None:
        return shotting(case)
    from tipsight.load.causes import account
    from tipsight.output.cause_words import account_lines, two_floats

    old = settle(named_question(was))
    lines = account_lines(account(old, case), case.box.shot, two_floats(old, case))
    return "\n".join(("WHY IT TAKES WHAT IT TAKES", *lines)) + "\n"
