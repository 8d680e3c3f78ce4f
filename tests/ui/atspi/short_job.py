# SPDX-License-Identifier: GPL-3.0-or-later
"""Opens a job and looks at its paper by the names that assistive tools are told, nothing else.

Usage: short_job.py PROGRAM. Starts the program, which makes its first book in XDG_DATA_HOME, and
ends it again; wants a session bus and a display (run.sh brings both). Says which name was missing
and fails.
"""

import signal
import subprocess
import sys
import time

import pyatspi

PATIENCE = 20.0  # s for a condition; a loaded computer is slow, a missing name is not found at all
PAUSE = 0.05
FEWEST_STOPS = 6  # the top bar alone has as many
BUTTONS = (pyatspi.ROLE_PUSH_BUTTON, pyatspi.ROLE_TOGGLE_BUTTON, pyatspi.ROLE_CHECK_BOX)


class Missing(Exception):
    """A name that assistive tools were not told."""


def wait_for(what, look):
    """The first true answer of look(), asked again until it comes."""
    end = time.monotonic() + PATIENCE
    while time.monotonic() < end:
        try:
            found = look()
        except Exception:  # a widget that went away while it was asked
            found = None
        if found:
            return found
        time.sleep(PAUSE)
    raise Missing(what)


def tree(node):
    """The node and everything below it that can be seen."""
    yield node
    for i in range(node.childCount):
        child = node.getChildAtIndex(i)
        if child is not None:
            yield from tree(child)


def seen(node):
    states = node.getState()
    return states.contains(pyatspi.STATE_SHOWING) and states.contains(pyatspi.STATE_VISIBLE)


class Program:
    def __init__(self, process):
        self.process = process
        self.window = wait_for("the program on the bus", self._find)

    def _find(self):
        if self.process.poll() is not None:
            raise SystemExit(f"the program ended with {self.process.returncode}")
        for app in pyatspi.Registry.getDesktop(0):
            if app is not None and app.get_process_id() == self.process.pid and app.childCount:
                return app.getChildAtIndex(0)
        return None

    def named(self, name, roles=()):
        """The widget that is shown under this name."""

        def look():
            for node in tree(self.window):
                if node.name == name and seen(node) and (not roles or node.getRole() in roles):
                    return node
            return None

        return wait_for(f"nothing is called “{name}”", look)

    def press(self, name):
        node = self.named(name, BUTTONS)
        actions = node.queryAction()
        names = [actions.getName(i) for i in range(actions.nActions)]
        for wanted in ("Toggle", "Press"):
            if wanted in names:
                actions.doAction(names.index(wanted))
                return node
        raise Missing(f"“{name}” cannot be pressed: {names}")

    def answer(self, name):
        """A button that stays down, by its question and answer."""
        node = self.press(name)
        wait_for(f"“{name}” does not say that it is chosen",
                 lambda: node.getState().contains(pyatspi.STATE_CHECKED))

    def type(self, name, text):
        node = self.named(name, (pyatspi.ROLE_TEXT,))
        node.queryEditableText().setTextContents(text)
        wait_for(f"“{name}” does not hold what was typed",
                 lambda: node.queryText().getText(0, -1) == text)

    def says(self, words):
        """Something that is shown reads so."""
        wait_for(f"nothing reads “{words}”",
                 lambda: any(words in (node.name or "") and seen(node)
                             for node in tree(self.window)))

    def key(self, keys, name):
        """A real key on the display brings the keyboard to the widget of this name."""
        node = self.named(name)
        subprocess.run(["xdotool", "key", "--clearmodifiers", keys], check=True)
        wait_for(f"{keys} does not bring the keyboard to “{name}”",
                 lambda: node.getState().contains(pyatspi.STATE_FOCUSED))

    def stops(self):
        """What takes the keyboard."""
        return [node for node in tree(self.window)
                if seen(node) and node.getState().contains(pyatspi.STATE_FOCUSABLE)]


def no_nameless(program, where):
    stops = program.stops()
    if len(stops) < FEWEST_STOPS:
        raise Missing(f"{where}: hardly anything takes the keyboard")
    nameless = [f"{node.getRoleName()} in “{node.parent.name if node.parent else ''}”"
                for node in stops if not node.name]
    if nameless:
        raise Missing(f"{where}: without a name: {', '.join(nameless)}")


def short_job(program):
    program.says("No job is open")
    no_nameless(program, "start page")
    program.key("ctrl+f", "Find: plate, VIN, owner, owner's words, part or note")
    program.press("New job")
    program.type("Registration", "HBX 204")
    program.type("Your name", "Ina Brook")
    program.type("The owner's words", "shakes at fifty")
    program.answer("Does it shake under braking? no")
    program.answer("Only in a band of road speed? yes")
    program.answer("Does a bump start it? yes")
    program.answer("Where is it felt? steering wheel")
    no_nameless(program, "new job")
    program.press("Open the job")
    program.press("Go on: HBX 204, job 1, no plan yet")
    program.press("Paper")
    program.says("Job 1 on paper")
    no_nameless(program, "paper")
    program.answer("Read as text")
    sheet = program.named("The document as text")
    wait_for("the sheet does not tell the owner's words",
             lambda: "shakes at fifty" in sheet.queryText().getText(0, -1))
    program.press("Start")
    program.says("Open jobs")


def main():
    process = subprocess.Popen([sys.argv[1], "window"])
    try:
        short_job(Program(process))
    except Missing as missing:
        print(f"not accessible: {missing}", file=sys.stderr)
        return 1
    finally:
        if process.poll() is None:
            process.send_signal(signal.SIGTERM)
            process.wait(10)
    return 0


if __name__ == "__main__":
    sys.exit(main())
