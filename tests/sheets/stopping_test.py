"""Stopped at any moment: the office ends, its profile and every lock go, the target stays whole, the next run works."""

import fcntl
import os
import shutil
import signal
import socket
import subprocess
import time

import pytest

from calls import BUILD, done, give
from jobbook_test import SMALL
from target_test import made  # noqa: F401


def children_of(profiles):
    """Processes whose command line names one of these folders."""
    found = []
    for process in os.listdir("/proc"):
        try:
            line = open(f"/proc/{process}/cmdline", encoding="utf-8", errors="replace").read()
        except OSError:
            continue
        if process.isdigit() and str(profiles) in line:
            found.append((process, line))
    return found


def gone(condition, seconds):
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        if condition():
            return True
        time.sleep(0.05)
    return condition()


@pytest.mark.parametrize("how, after", [
    (signal.SIGKILL, "lock"), (signal.SIGTERM, "lock"), (signal.SIGTERM, "profile"), (signal.SIGKILL, "office"), (signal.SIGINT, "office"),
    (signal.SIGKILL, "document"), (signal.SIGTERM, "document"),
])
def test_stopped(made, tmp_path, how, after):  # noqa: F811
    temporary = tmp_path / "tmp"
    temporary.mkdir()
    shutil.copy(made / "job.ods", tmp_path / "job.ods")
    notes = give(tmp_path / "more", rules="Key,Value\ncover.lawn,14\n")
    before = (tmp_path / "job.ods").read_bytes()
    seen = {
        "lock": lambda: (tmp_path / ".~lock.job.ods#").exists(),
        "profile": lambda: list(temporary.glob("trenchbook-*")),
        "office": lambda: any("soffice.bin" in line for _, line in children_of(temporary)),
        "document": lambda: list(temporary.glob("trenchbook-*/*/1/job.ods")),
    }[after]
    running = subprocess.Popen([str(BUILD / "jobbook"), "fill", notes, "job.ods"], cwd=tmp_path, stdout=subprocess.DEVNULL,
                               stderr=subprocess.DEVNULL, env={**os.environ, "TMPDIR": str(temporary)},
                               preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL))
    assert gone(seen, 60), "it came so far"
    assert running.poll() is None
    running.send_signal(how)
    assert running.wait(20) == -how
    # A signal that can be caught is answered when all is gone; a kill is noticed by the office's keeper.
    patience = 20 if how == signal.SIGKILL else 0
    assert gone(lambda: not children_of(temporary), patience), children_of(temporary)
    if how != signal.SIGKILL or after in ("office", "document"):
        assert gone(lambda: not list(temporary.iterdir()), patience), list(temporary.rglob("*"))
        assert gone(lambda: not (tmp_path / ".~lock.job.ods#").exists(), patience)
    assert (tmp_path / "job.ods").read_bytes() == before
    done("fill", notes, "job.ods", cwd=tmp_path)
    assert not list(tmp_path.glob(".*"))


@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM])
def test_stopped_while_it_waits_for_another_jobbook(made, tmp_path, how):  # noqa: F811
    """It waits up to two minutes, and ends at once when it is asked to."""
    temporary = tmp_path / "tmp"
    temporary.mkdir()
    shutil.copy(made / "job.ods", tmp_path / "job.ods")
    notes = give(tmp_path / "more", rules="Key,Value\ncover.lawn,14\n")
    host = socket.gethostname()
    with open(tmp_path / ".~lock.job.ods#", "w") as lock:
        lock.write(f"jobbook,rh,{host},26.11.2026 08:15,;")
        lock.flush()
        fcntl.flock(lock, fcntl.LOCK_EX)
        running = subprocess.Popen([str(BUILD / "jobbook"), "fill", notes, "job.ods"], cwd=tmp_path, stderr=subprocess.PIPE,
                                   text=True, env={**os.environ, "TMPDIR": str(temporary)},
                                   preexec_fn=lambda: signal.signal(signal.SIGINT, signal.SIG_DFL))
        assert "waiting" in running.stderr.readline()
        running.send_signal(how)
        assert running.wait(5) == -how
        assert running.stderr.read() == ""
    assert not list(temporary.iterdir())
    assert (tmp_path / ".~lock.job.ods#").read_text().startswith("jobbook,rh,"), "the other's lock stays"
