"""``tipsight page``: the page on this machine, with the question of a file as its start."""

import errno
import ipaddress
import logging
import socket
import sys

import click

from tipsight.commands.asking import Asked, command
from tipsight.commands.parsing import whole
from tipsight.errors import Mistake, Mistakes

PORT = 8765
HERE = "127.0.0.1"
_NOWHERE = "192.0.2.1"
"""An address that no machine has (RFC 5737), by which this machine tells the way it would take."""


def own_address() -> str:
    """Return this machine's address on the house network, four numbers with dots."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect((_NOWHERE, 9))  # a datagram socket sends nothing by that
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

    ``host`` empty is to be found, None is this machine only.

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


@command
@click.option(
    "--host",
    is_flag=False,
    flag_value="",
    metavar="ADDRESS",
    help="open the page to the house network too, under this machine's own address there, "
    "which is found when none is given; anyone on that network can then ask it",
)
@click.option(
    "--port",
    type=whole(1, 65535, PORT),
    default=PORT,
    metavar="NUMBER",
    help=f"{PORT} if not given",
)
@click.option(
    "--let-write",
    is_flag=True,
    help="let those on the house network put floats and notes into your box, too; without it "
    "only this machine may",
)
def run(put: Asked, host: str | None, port: int, let_write: bool) -> str:
    """Serve the page until it is stopped."""
    import waitress.server

    from tipsight.box import keeping
    from tipsight.inputs.settle import settle
    from webui import create_app

    settle(put.question)
    at = addresses(host)
    box = keeping.place(put.box)
    own = None if put.untold else put.question
    app = create_app(
        own, hosts=at[1:], box=box, let_write=let_write, who=put.who, water=put.water
    )
    server = waitress.server.create_server(
        app,
        sockets=_opened(at, port),
        threads=4,
        ident=None,
        max_request_header_size=16384,
        max_request_body_size=65536,
        connection_limit=200,
    )
    lines = [f"The page is open at http://{HERE}:{port}/ (Ctrl-C ends it)."]
    if len(at) > 1:
        alone = "; only this machine writes into the box"
        may = f"ask it{' and write into the box' if let_write else alone}"
        lines.append(f"On the phone type http://{at[1]}:{port}/ ; all who are on that network can {may}.")
    lines.append(f"What you tell it to keep goes into {box}.")
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
