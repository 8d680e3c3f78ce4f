# SPDX-License-Identifier: GPL-3.0-or-later
"""The program under test as one long-running process: a line of JSON in, a line out."""

import json
import subprocess
from types import TracebackType


class Program:
    """`swivelwright compute --stream`, asked again and again."""

    def __init__(self, path: str) -> None:
        self._process = subprocess.Popen(
            [path, "compute", "--stream"], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
            encoding="utf-8")
        self._asked = 0

    def __enter__(self) -> "Program":
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None,
                 trace: TracebackType | None) -> None:
        self._process.stdin.close()
        status = self._process.wait(timeout=30)
        if kind is None and status != 0:
            raise RuntimeError(f"the program ended with status {status}")

    def ask(self, calculation: str, inputs: dict) -> dict:
        """The answer to one question: an object with "result" or with "error"."""
        self._asked += 1
        question = {"id": self._asked, "compute": calculation, "input": inputs}
        self._process.stdin.write(json.dumps(question) + "\n")
        self._process.stdin.flush()
        line = self._process.stdout.readline()
        if not line:
            raise RuntimeError(f"the program ended at {json.dumps(question)}")
        answer = json.loads(line)
        if answer.get("id") != self._asked:
            raise RuntimeError(f"asked {self._asked}, answered {line}")
        return answer
