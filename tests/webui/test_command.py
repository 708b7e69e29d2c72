"""``tipsight page``: it opens, says where, admits only what it should, and ends quietly."""

import errno
import signal
import socket
import subprocess
import sys
import urllib.error
import urllib.request

import pytest

from tipsight import cli
from tipsight.commands import page
from tipsight.errors import Mistakes


def free_port():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return one.getsockname()[1]


@pytest.fixture
def opened(tmp_path):
    """Start the command on a free port; return what it printed, and its port."""
    running = []

    def start(*arguments):
        port = free_port()
        command = [sys.executable, "-m", "tipsight", "page", *arguments, "--port", str(port)]
        # A suite run in the background of a script ignores Ctrl-C, and what it starts would too.
        ours = signal.signal(signal.SIGINT, signal.default_int_handler)
        process = subprocess.Popen(  # noqa: S603 - our own command
            command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, encoding="utf-8"
        )
        signal.signal(signal.SIGINT, ours)
        running.append(process)
        return process.stdout.readline(), port, process

    yield start
    for process in running:
        process.kill()
        process.communicate()


def status(address, host=None):
    asking = urllib.request.Request(address, headers={"Host": host} if host else {})  # noqa: S310
    try:
        with urllib.request.urlopen(asking, timeout=20) as reply:  # noqa: S310 - our own page
            return reply.status, reply.read().decode()
    except urllib.error.HTTPError as refused:
        with refused:
            return refused.code, refused.read().decode()


def test_a_file_holds_ones_own_question_and_the_page_ends_quietly(opened, tmp_path, monkeypatch):
    monkeypatch.setenv("TIPSIGHT_BOX", str(tmp_path / "my.box"))
    mine = tmp_path / "mine.toml"
    mine.write_text('[place]\ndistance = "17 yd"\n[behind]\nbehind = "dark"\n', encoding="utf-8")
    line, port, process = opened(str(mine))
    assert line == f"The page is open at http://127.0.0.1:{port}/ (Ctrl-C ends it).\n"
    kept = process.stdout.readline()
    assert kept == f"What you tell it to keep goes into {tmp_path / 'my.box'}.\n"
    code, text = status(f"http://127.0.0.1:{port}/")
    assert code == 200
    assert "17 yd (16 m), dark water behind the tip" in text
    assert "invented" not in text
    assert status(f"http://127.0.0.1:{port}/nowhere", "evil.example")[0] == 400
    process.send_signal(signal.SIGINT)
    out, err = process.communicate(timeout=20)
    assert (out, err, process.returncode) == ("", "", 0)
    assert not (tmp_path / "my.box").exists()  # nothing was told to be kept


def test_the_house_network_is_admitted_by_exactly_one_address(opened):
    line, port, process = opened("--host", "127.0.0.2")
    assert "127.0.0.1" in line
    phone = process.stdout.readline()
    assert phone == (
        f"On the phone type http://127.0.0.2:{port}/ ; all who are on that network can ask it; "
        "only this machine writes into the box.\n"
    )
    assert "Put it in" not in status(f"http://127.0.0.2:{port}/box")[1]
    nowhere = f"http://127.0.0.2:{port}/nowhere"
    assert status(nowhere)[0] == 404
    assert status(nowhere, f"127.0.0.3:{port}")[0] == 400
    with pytest.raises(urllib.error.URLError):
        status(f"http://127.0.0.3:{port}/nowhere")


def test_those_on_the_house_network_write_only_where_they_are_let(opened):
    _, port, process = opened("--host", "127.0.0.2", "--let-write")
    phone = process.stdout.readline()
    assert phone.endswith("all who are on that network can ask it and write into the box.\n")
    code, text = status(f"http://127.0.0.2:{port}/box")
    assert (code, "Put it in" in text) == (200, True)


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--port", "x"], "--port: 'x' will not do; say a whole number, 1 to 65535"),
        (["--port", "70000"], "--port: '70000' will not do; say a whole number, 1 to 65535"),
        (
            ["--host", "mine.toml"],
            "--host: 'mine.toml' will not do; say one address of this machine",
        ),
        (["--host", "0.0.0.0"], "--host: '0.0.0.0' will not do; say one address"),  # noqa: S104
        (
            ["--host", "192.0.2.77"],
            "--host: '192.0.2.77' will not do; this machine has no such address",
        ),
        (["--distance", "frog"], "distance: 'frog' will not do"),
        (["nowhere.toml"], "file: 'nowhere.toml' will not do; there is no such file"),
    ],
)
def test_what_is_wrong_is_told_before_anything_opens(arguments, says, capsys):
    assert cli.main(["page", *arguments]) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith(says)


def test_a_port_that_is_taken_is_told(capsys):
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        assert cli.main(["page", "--port", str(port)]) == 2
    assert (
        f"--port: '{port}' will not do; something is open there already" in capsys.readouterr().err
    )


def test_any_other_trouble_is_told():
    wrong = page._closed(OSError(errno.EACCES, "Permission denied"), "127.0.0.1", 80)
    assert str(wrong) == (
        "--port: '80' will not do; the page cannot open there (Permission denied) "
        "(for example --port 8765)"
    )


def test_a_machine_without_a_network_is_told(monkeypatch):
    class Alone(socket.socket):
        def connect(self, address):
            raise OSError(errno.ENETUNREACH, "Network is unreachable")

    monkeypatch.setattr(socket, "socket", Alone)
    with pytest.raises(Mistakes, match="--host: this machine is on no network; say its address"):
        page.addresses("")


def test_the_own_address_is_found_without_sending_anything(monkeypatch):
    class Home(socket.socket):
        def connect(self, address):
            assert self.type == socket.SOCK_DGRAM

        def getsockname(self):
            return ("192.168.1.20", 5)

    monkeypatch.setattr(socket, "socket", Home)
    assert page.addresses("") == ("127.0.0.1", "192.168.1.20")
