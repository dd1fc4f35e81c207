"""A headless office of our own: fresh profile, a pipe nobody else uses, our extension unpacked beside it."""

import os
import shutil
import signal
import socket
import subprocess
import tempfile
import time
import uuid
from pathlib import Path

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException
from com.sun.star.lang import DisposedException


def url(path):
    return uno.systemPathToFileUrl(str(Path(path).resolve()))


def free_port():
    with socket.socket() as probe:
        probe.bind(("localhost", 0))
        return probe.getsockname()[1]


def properties(**values):
    made = []
    for name, value in values.items():
        item = PropertyValue()
        item.Name, item.Value = name, value
        made.append(item)
    return tuple(made)


class Office:
    """`extensions` holds unpacked extensions, each in a folder of its own; None for an office without ours.

    `command` goes before soffice (to become another user), `profile` is made when not given.
    """

    headless = ("--headless",)
    environment = None  # its own, where it needs one

    def __init__(self, extensions=None, profile=None, command=(), headless=True):
        self.own_profile = profile is None
        self.profile = Path(profile or tempfile.mkdtemp(prefix="trenchbook-office-"))
        # A pipe's name carries its user: another user's office is reached through a socket.
        address = f"socket,host=localhost,port={free_port()}" if command else "pipe,name=trenchbook-" + uuid.uuid4().hex
        words = [*command, "/usr/bin/soffice", *(self.headless if headless else ()), "--norestore", "--nologo",
                 *(["--nodefault"] if headless else []),
                 f"--accept={address};urp", f"-env:UserInstallation={url(self.profile)}"]
        if extensions:
            words.append(f"-env:BUNDLED_EXTENSIONS={url(extensions)}")
        self.log = open(self.profile / "office.log", "w") if self.own_profile else subprocess.DEVNULL
        self.process = subprocess.Popen(words, stdout=self.log, stderr=self.log, start_new_session=True, env=self.environment)
        try:
            self._connect(address)
        except BaseException:
            self.end()
            raise

    def _connect(self, address):
        local = uno.getComponentContext()
        resolver = local.ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", local)
        self.context = self.desktop = None
        for _ in range(600):
            try:
                self.context = resolver.resolve(f"uno:{address};urp;StarOffice.ComponentContext")
                break
            except NoConnectException:
                if self.process.poll() is not None:
                    raise RuntimeError(f"the office ended at once, code {self.process.returncode}")
                time.sleep(0.1)
        else:
            raise RuntimeError("the office did not answer within a minute")
        self.desktop = self.service("com.sun.star.frame.Desktop")

    def service(self, name):
        return self.context.ServiceManager.createInstanceWithContext(name, self.context)

    def new(self):
        return self.desktop.loadComponentFromURL("private:factory/scalc", "_blank", 0, properties(Hidden=True))

    def open(self, path, **more):
        made = self.desktop.loadComponentFromURL(url(path), "_blank", 0, properties(Hidden=True, **more))
        if made is None:
            raise RuntimeError(f"the office could not open {path}")
        return made

    def processes(self):
        """The office itself, without the scripts that started it."""
        group = subprocess.run(["pgrep", "-g", str(self.process.pid), "soffice.bin"], capture_output=True, text=True)
        return group.stdout.split()

    def processor_time(self):
        """Seconds of processor time so far, of all its threads, also those that ended."""
        # The clock of another process, as clock_getcpuclockid() names it.
        return sum(time.clock_gettime((~int(process) << 3) | 2) for process in self.processes())

    def end(self):
        try:
            if getattr(self, "desktop", None):
                self.desktop.terminate()
        except DisposedException:
            pass
        try:
            self.process.wait(20)
        except subprocess.TimeoutExpired:
            os.killpg(self.process.pid, signal.SIGKILL)
            self.process.wait()
        if self.own_profile:
            self.log.close()
            shutil.rmtree(self.profile, ignore_errors=True)

    def __enter__(self):
        return self

    def __exit__(self, *error):
        self.end()


def save(document, path, kind="calc8"):
    document.storeToURL(url(path), properties(FilterName=kind))
