"""The worksheet functions of Soundfold in LibreOffice Calc.

Calc calls a method here for every formula; the answer is worked out by one long-lived Node.js process that runs the
same program as every other spreadsheet. A call and its answer are one line of JSON each.
"""

import glob
import json
import os
import shutil
import struct
import subprocess
import sys
import threading

import unohelper

HERE = os.path.dirname(os.path.abspath(__file__))
with open(os.path.join(HERE, "functions.json"), encoding="utf-8") as listed:
    FUNCTIONS = json.load(listed)
SERVICE = FUNCTIONS["service"]
# The longest list of 100,000 records takes a few seconds; Calc stands still while it waits.
LONGEST_WAIT = float(os.environ.get("SOUNDFOLD_LONGEST_WAIT", "60"))
OLDEST_NODE = tuple(FUNCTIONS["oldestNode"])


def _error(number):
    # Calc reads an error out of the low bits of a number that is none.
    return struct.unpack("<d", struct.pack("<Q", 0x7FF8000000000000 | number))[0]


# Calc's own numbers of these errors. No value at all would do for #N/A in a single cell, but is 0 within a rectangle.
ERRORS = {"#N/A": _error(32767), "#VALUE!": _error(519), "#NAME?": _error(525)}


class CannotRun(Exception):
    """Why no function can be answered, in words for the person at the sheet."""


def _places_of_node():
    chosen = os.environ.get("SOUNDFOLD_NODE")
    if chosen:
        return [chosen]
    home = os.path.expanduser("~")
    # A program started from a menu does not see what a shell adds to the search path.
    places = [
        shutil.which("node"),
        "/usr/bin/node",
        "/usr/local/bin/node",
        "/opt/homebrew/bin/node",
        os.path.join(home, ".volta", "bin", "node"),
        os.path.join(os.environ.get("ProgramFiles", r"C:\Program Files"), "nodejs", "node.exe"),
    ]
    versions = glob.glob(os.path.join(home, ".nvm", "versions", "node", "*", "bin", "node"))
    return [place for place in places + sorted(versions, reverse=True) if place and os.path.isfile(place)]


def _quietly():
    # Without this Windows opens a black window for each program.
    return {"creationflags": subprocess.CREATE_NO_WINDOW} if sys.platform == "win32" else {}


def _version_of(node):
    try:
        said = subprocess.run(
            [node, "--version"], stdin=subprocess.DEVNULL, capture_output=True, text=True, timeout=30, **_quietly()
        ).stdout.strip()
        return tuple(int(part) for part in said.lstrip("v").split(".")[:3])
    except (OSError, ValueError, subprocess.SubprocessError):
        return None


def _find_node():
    wanted = ".".join(str(part) for part in OLDEST_NODE)
    advice = (
        "Install Node.js %s or newer from nodejs.org, or name its program in the environment variable SOUNDFOLD_NODE, "
        "and start LibreOffice again." % wanted
    )
    too_old = []
    for place in _places_of_node():
        version = _version_of(place)
        if version is None:
            continue
        if version[: len(OLDEST_NODE)] >= OLDEST_NODE:
            return place
        too_old.append("%s is version %s" % (place, ".".join(str(part) for part in version)))
    if too_old:
        raise CannotRun("Soundfold needs a newer Node.js: %s. %s" % ("; ".join(too_old), advice))
    raise CannotRun("Soundfold needs Node.js and did not find it. %s" % advice)


class Runner:
    """The Node.js process: started at the first call, started again once if it ends."""

    def __init__(self):
        self.child = None
        self.has_answered = False
        self.trouble = None
        self.lock = threading.Lock()

    def ask(self, call):
        line = json.dumps(call).encode("ascii") + b"\n"
        with self.lock:
            answer = self._exchange(line)
            if answer is None and self.has_answered:
                self._end()
                answer = self._exchange(line)
            if answer is None:
                self._give_up()
            return json.loads(answer)

    def _exchange(self, line):
        if self.trouble:
            raise CannotRun(self.trouble)
        if self.child is None:
            self._start()
        child = self.child
        overdue = threading.Event()

        def stop():
            overdue.set()
            child.kill()

        waiting = threading.Timer(LONGEST_WAIT, stop)
        waiting.daemon = True
        waiting.start()
        try:
            child.stdin.write(line)
            child.stdin.flush()
            answer = child.stdout.readline()
        except OSError:
            answer = b""
        finally:
            waiting.cancel()
        if overdue.is_set():
            # The next call starts it again.
            self._end()
            raise CannotRun(
                "Soundfold gave no answer within %g seconds and was stopped. Enter the formula again; "
                "if it happens again, give it fewer rows." % LONGEST_WAIT
            )
        # A line cut short is no answer: the process ended while it wrote.
        if not answer.endswith(b"\n"):
            return None
        self.has_answered = True
        return answer

    def _start(self):
        try:
            node = _find_node()
        except CannotRun as reason:
            self.trouble = str(reason)
            raise
        self.has_answered = False
        try:
            self.child = subprocess.Popen(
                [node, os.path.join(HERE, "answerLines.cjs")],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                **_quietly(),
            )
        except OSError as reason:
            self.trouble = "Soundfold could not start %s: %s" % (node, reason)
            raise CannotRun(self.trouble) from reason

    def _end(self):
        child, self.child = self.child, None
        if child is None:
            return None
        for pipe in (child.stdin, child.stdout):
            try:
                pipe.close()
            except OSError:
                pass
        try:
            return child.wait(timeout=5)
        except subprocess.TimeoutExpired:
            child.kill()
            return child.wait()

    def _give_up(self):
        code = self._end()
        self.trouble = (
            "Soundfold's program ended without an answer (code %s). Save your work and start LibreOffice again; "
            "if it happens again, look for the formula that was entered last." % code
        )
        raise CannotRun(self.trouble)


RUNNER = Runner()


def _sent_argument(value):
    if not isinstance(value, tuple):
        return value
    filled = len(value)
    while filled > 0 and all(cell == "" for cell in value[filled - 1]):
        filled -= 1
    # A whole column is a million rows; those behind the last record are only counted.
    return {"rows": len(value), "cells": value[:filled]}


def _counts_from_1904(document):
    start = document.NullDate
    if (start.Year, start.Month, start.Day) == (1899, 12, 30):
        return False
    if (start.Year, start.Month, start.Day) == (1904, 1, 1):
        return True
    raise CannotRun(
        "this document counts its dates from %d-%02d-%02d; choose 12/30/1899 in Tools > Options > LibreOffice Calc > "
        "Calculate" % (start.Year, start.Month, start.Day)
    )


def _answer(function, given):
    """The rectangle of cells, or an error in a rectangle of one."""
    name = function["name"]
    try:
        call = [name, [_sent_argument(value) for value in given[: function["arguments"]]]]
        if function["dates"]:
            call.append(_counts_from_1904(given[-1]))
        answer = RUNNER.ask(call)
    except CannotRun as reason:
        # ABOUT gives a text in any case, so it is the one cell in which the reason can be read.
        if name == "ABOUT":
            return ((str(reason),),)
        answer = {"code": "#VALUE!", "message": str(reason)}
    if "cells" in answer:
        return tuple(tuple(cell if isinstance(cell, str) else float(cell) for cell in row) for row in answer["cells"])
    return ((ERRORS[answer["code"]],),)


def _method(function):
    if function["rectangle"]:
        return lambda self, *given: _answer(function, given)
    return lambda self, *given: _answer(function, given)[0][0]


def _functions(context, *_):
    # The types of the extension are known only once Calc asks for the service.
    from com.sun.star.lang import XServiceInfo
    from soundfold import XFoot

    class Functions(unohelper.Base, XFoot, XServiceInfo):
        def getImplementationName(self):
            return SERVICE

        def supportsService(self, name):
            return name == SERVICE

        def getSupportedServiceNames(self):
            return (SERVICE,)

    for function in FUNCTIONS["functions"]:
        setattr(Functions, function["method"], _method(function))
    return Functions()


g_ImplementationHelper = unohelper.ImplementationHelper()
g_ImplementationHelper.addImplementation(_functions, SERVICE, (SERVICE,))
