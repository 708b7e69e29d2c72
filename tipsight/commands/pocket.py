"""``tipsight pocket``: one file for the phone with all the answers of one float."""

import os
from concurrent.futures import ProcessPoolExecutor

from tipsight.commands.asking import Asked, command
from tipsight.commands.writing import output, progress, write


@command
@output("float.html")
def run(put: Asked, out: str) -> str:
    """Write the file, and return what was written."""
    from tipsight.inputs.settle import settle
    from tipsight.paper import pocket

    settle(put.question)  # a mistake is told at once, not by every core
    with ProcessPoolExecutor(os.cpu_count()) as cores:
        said = pocket.html(put.question, progress("answers"), cores)
    put.keep()
    return write(out, said.encode(), "send it to the phone; it needs no network")
