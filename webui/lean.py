"""HTML without what a browser puts in by itself, so that a page is soon there."""

import re

_ENDS = re.compile(r"</(?:li|dt|dd|option|t[dhr]|thead|tbody)>")
_QUOTED = re.compile(r'(?<=[\w-]=)"([\w.:/?#+%-]*[\w.:?#+%-])"(?=[ >])')
_BLOCKS = (
    "section|div|nav|main|header|footer|h[1-6]|p|[ou]l|li|dl|tr|form|fieldset|label|input|textarea"
    "|select|option|table|details|head|body|title|meta|link|script"
)
_BETWEEN = re.compile(rf"\s*\n\s*(?=<(?:{_BLOCKS})\b|</(?!textarea))")


def lean(html: str) -> str:
    r"""Return a page of ours without the end tags and quotes that HTML lets one leave out.

    Parameters
    ----------
    html : str
        A page whose texts and attributes are escaped, so that what looks like a tag is one.

    Returns
    -------
    str
        The same page to a browser.

    Notes
    -----
    HTML Standard (WHATWG), 13.1.2.4 "Optional tags" and 13.1.2.3 "Attributes": the end of a list
    item, table cell, row or option is where the next one begins or its parent ends; a value without
    spaces, quotes, ``=``, ``<``, ``>`` or a grave accent needs no quotes.

    Examples
    --------
    >>> lean('<ul class="taps">\n<li>one</li>\n<li id="x y">two</li></ul>')
    '<ul class=taps><li>one<li id="x y">two</ul>'
    """
    return _QUOTED.sub(r"\1", _ENDS.sub("", _BETWEEN.sub("", html)))
