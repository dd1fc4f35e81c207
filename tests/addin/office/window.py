"""A Calc with a window on a screen of its own, used by keyboard."""

import os
import subprocess
import time

from office import Office

SIZE = "1400x900x24"
QUIET = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Common/Misc"><prop oor:name="ShowTipOfTheDay" oor:op="fuse"><value>false</value></prop></item>
<item oor:path="/org.openoffice.Office.Common/Misc"><prop oor:name="FirstRun" oor:op="fuse"><value>false</value></prop></item>
</oor:items>
"""


class Screen:
    """An X server that nobody sees, with a window manager: boxes get the keyboard only with one."""

    def __init__(self):
        read, write = os.pipe()
        self.server = subprocess.Popen(["Xvfb", "-displayfd", str(write), "-screen", "0", SIZE, "-nolisten", "tcp"],
                                       pass_fds=[write], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(write)
        with os.fdopen(read) as told:
            name = ":" + told.readline().strip()
        self.environment = {**os.environ, "DISPLAY": name, "SAL_USE_VCLPLUGIN": "gen"}
        self.manager = subprocess.Popen(["openbox"], env=self.environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)

    def end(self):
        for process in (self.manager, self.server):
            process.terminate()
            process.wait(20)

    def tool(self, *words):
        return subprocess.run(["xdotool", *words], env=self.environment, capture_output=True, text=True).stdout.split()

    def keys(self, *keys):
        for key in keys:
            self.tool("key", "--clearmodifiers", key)
            time.sleep(0.5)

    def type(self, text):
        self.tool("type", "--delay", "30", text)
        time.sleep(0.5)

    def windows(self, title):
        """The windows that have this in their title."""
        return self.tool("search", "--onlyvisible", "--name", title)


def wait(condition, says, seconds=180):
    end = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < end, says
        time.sleep(0.3)


class WindowOffice(Office):
    """The office of the tests, with its windows on the screen."""

    headless = ()

    def __init__(self, screen, extensions, profile):
        self.environment = screen.environment
        settings = profile / "user/registrymodifications.xcu"
        if not settings.exists():
            settings.parent.mkdir(parents=True)
            settings.write_text(QUIET, encoding="utf-8")
        super().__init__(extensions, profile)

    def documents(self):
        found = self.desktop.Components.createEnumeration()
        while found.hasMoreElements():
            yield found.nextElement()


class Desk:
    """The job in the window, and the keyboard."""

    def __init__(self, screen, office, document):
        self.screen, self.office, self.document = screen, office, document

    def take(self, letter):
        self.document.CurrentController.Frame.ContainerWindow.setFocus()
        self.screen.keys("alt+b", letter)

    def box(self, title, *keys):
        """Waits for a box, answers it with these keys, waits until it is gone; one of the same title may follow."""
        def gone():
            return not set(there) & set(self.screen.windows(title))

        wait(lambda: self.screen.windows(title), f"no box {title}")
        there = self.screen.windows(title)
        self.screen.keys(*keys or ["Return"])
        wait(gone, f"{title} stays")

    def pick(self, title, path):
        wait(lambda: self.screen.windows(title), f"no box {title}")
        self.screen.keys("ctrl+a")
        self.screen.type(str(path))
        self.box(title)
