"""``tipsight page``: the page on this machine, with the question of a file as its start."""

import argparse
import errno
import ipaddress
import logging
import socket
import sys

from tipsight.commands.asking import add_question, asked, with_tables
from tipsight.errors import Mistake, Mistakes

PORT = 8765
HERE = "127.0.0.1"
_NOWHERE = "192.0.2.1"
"""An address that no machine has (RFC 5737), by which this machine tells the way it would take."""


def add_options(parser: argparse.ArgumentParser) -> None:
    """Add what this command takes.

    Parameters
    ----------
    parser : argparse.ArgumentParser
        The command's parser.
    """
    parser.add_argument(
        "--host",
        nargs="?",
        const="",
        metavar="ADDRESS",
        help="open the page to the house network too, under this machine's own address there, "
        "which is found when none is given; anyone on that network can then ask it",
    )
    parser.add_argument(
        "--port", type=_port, default=PORT, metavar="NUMBER", help=f"{PORT} if not given"
    )
    add_question(parser)


def _port(text: str) -> int:
    if text.isdecimal() and 1 <= int(text) <= 65535:
        return int(text)
    raise argparse.ArgumentTypeError(
        f"{text!r} will not do; say a whole number, 1 to 65535 (for example {PORT})"
    )


def own_address() -> str:
    """Return this machine's address on the house network.

    Returns
    -------
    str
        Four numbers with dots.

    Raises
    ------
    Mistakes
        If it has none.

    Notes
    -----
    A datagram socket that is connected sends nothing; it only learns which way it would go.
    """
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect((_NOWHERE, 9))
            found = str(asking.getsockname()[0])
        except OSError:
            found = HERE
    if ipaddress.ip_address(found).is_loopback:
        raise Mistakes(
            [
                Mistake(
                    "--host",
                    "",
                    "this machine is on no network; say its address",
                    "--host 192.168.1.20",
                )
            ]
        )
    return found


def addresses(host: str | None) -> tuple[str, ...]:
    """Return the addresses at which the page is to listen, this machine's alone first.

    Parameters
    ----------
    host : str or None
        As told; empty: to be found; None: this machine only.

    Returns
    -------
    tuple of str
        One or two.

    Raises
    ------
    Mistakes
        If it is not one address of this machine.

    Examples
    --------
    >>> addresses(None), addresses("127.0.0.2")
    (('127.0.0.1',), ('127.0.0.1', '127.0.0.2'))
    """
    if host is None:
        return (HERE,)
    if not host:
        return (HERE, own_address())
    try:
        said = ipaddress.IPv4Address(host)
    except ValueError:
        said = None
    if said is None or said.is_unspecified or said.is_multicast:
        raise Mistakes(
            [
                Mistake(
                    "--host",
                    host,
                    "say one address of this machine, or none and it is found; "
                    "a file stands before it",
                    "tipsight page mine.toml --host",
                )
            ]
        )
    return tuple(dict.fromkeys((HERE, str(said))))


def run(given: argparse.Namespace) -> str:
    """Serve the page until it is stopped.

    Parameters
    ----------
    given : argparse.Namespace
        What the parser read.

    Returns
    -------
    str
        Nothing, when all is over.

    Raises
    ------
    Mistakes
        If the question, the address or the port will not do.
    """
    return with_tables(given, lambda: _serve(given))


def _serve(given: argparse.Namespace) -> str:
    import waitress.server

    from tipsight.inputs.settle import settle
    from webui import create_app

    put = asked(given, "page")
    settle(put.question)
    told = given.file is not None or put.given
    at = addresses(given.host)
    app = create_app(put.question if told else None, hosts=at[1:])
    server = waitress.server.create_server(
        app,
        sockets=_opened(at, given.port),
        threads=4,
        ident=None,
        max_request_header_size=16384,
        max_request_body_size=65536,
        connection_limit=200,
    )
    lines = [f"The page is open at http://{HERE}:{given.port}/ (Ctrl-C ends it)."]
    if len(at) > 1:
        lines.append(
            f"On the phone type http://{at[1]}:{given.port}/ ; "
            "all who are on that network can ask it."
        )
    sys.stdout.write("\n".join(lines) + "\n")
    sys.stdout.flush()
    logging.getLogger("waitress.queue").setLevel(logging.ERROR)  # a moment's wait is no news
    try:
        server.run()
    finally:
        server.close()
    return ""


def _opened(at: tuple[str, ...], port: int) -> list[socket.socket]:
    """Return a listening socket for each address, all of them or none."""
    opened: list[socket.socket] = []
    for address in at:
        try:
            opened.append(socket.create_server((address, port)))
        except OSError as error:
            for one in opened:
                one.close()
            raise Mistakes([_closed(error, address, port)]) from None
    return opened


def _closed(error: OSError, host: str, port: int) -> Mistake:
    """Return why the page cannot be opened."""
    if error.errno == errno.EADDRNOTAVAIL:
        return Mistake(
            "--host", host, "this machine has no such address", "--host, and it is found"
        )
    if error.errno == errno.EADDRINUSE:
        return Mistake(
            "--port", f"{port}", "something is open there already", f"--port {port % 65535 + 1}"
        )
    return Mistake(
        "--port",
        f"{port}",
        f"the page cannot open there ({error.strerror or error})",
        f"--port {PORT}",
    )
