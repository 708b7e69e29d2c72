"""``tipsight shot``: the bench's load job alone, with no water and no light in it."""

from tipsight.commands.asking import Asked, command


@command
def run(put: Asked) -> str:
    """Return what the float takes to each mark of its tip, and the shot for it."""
    from tipsight.inputs.settle import settle
    from tipsight.output.shotting import shotting

    return shotting(settle(put.question))
