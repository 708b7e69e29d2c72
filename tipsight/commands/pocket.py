"""``tipsight pocket``: one file for the phone with all the answers of one float."""

from tipsight.commands.asking import Asked, command
from tipsight.commands.writing import output, progress, write


@command
@output("float.html")
def run(put: Asked, out: str) -> str:
    """Write the file, and return what was written."""
    from tipsight.paper import pocket

    said = pocket.html(put.question, progress("answers"))
    return write(out, said.encode(), "send it to the phone; it needs no network")
