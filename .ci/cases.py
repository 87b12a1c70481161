#!/usr/bin/env python3
"""Holds the program as it is built to the sample jobs: cases.py PROGRAM FOLDER.

Every NAME.toml of the folder is given to check, marks and, where the case has places, suggest, and what they print is
compared with NAME.expect.json by the tolerances that the folder's README states. Nothing of the program's own code is used,
so what it prints is read as any other program would. Only the standard library is needed.
"""
import json
import math
import os
import pathlib
import subprocess
import sys
import tempfile

VERDICTS = {"foul": 0, "doubtful": 1, "clear": 2}  # in the order in which findings come
CODES = {"clear": 0, "doubtful": 10, "foul": 11}
ONE_FINDING = ("id", "subject", "against", "kind", "unit")  # what tells a finding from the others, with what is asked


def value_within(finding):
    """How far a finding's value may be off."""
    if finding["id"].startswith("pilot."):
        return 0.03 * finding["value"] + 0.02
    if finding["unit"] == "count":
        return 0
    if finding["unit"] == "mm/m":
        return max(0.1, abs(finding["value"]) * 1e-3)
    return 0.1


def differences(want, got, within, name):
    """Yields a line for each part of want that got has not; numbers may be off by within, got may have further fields."""
    if isinstance(want, dict) and isinstance(got, dict):
        for key, part in want.items():
            yield from differences(part, got.get(key, "nothing"), within, f"{name}.{key}")
    elif isinstance(want, list) and isinstance(got, list) and len(want) == len(got):
        for i, (part, there) in enumerate(zip(want, got)):
            yield from differences(part, there, within, f"{name}[{i}]")
    elif is_number(want) and is_number(got):
        if abs(want - got) > within + 1e-9:
            yield f"{name}: {got}, not {want} within {within}"
    elif want != got:
        yield f"{name}: {got!r}, not {want!r}"


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def same_pair(want, got):
    """Whether two pairs of nearest points are as good as each other: two sides that lie along one another have many."""
    if not any(differences(want, got, 0.1, "")):
        return True
    apart = [[p - q for p, q in zip(*pair)] for pair in (want, got)]
    level = any(abs(c) < 0.1 for c in apart[0])  # the way from one to the other runs along an axis
    return level and not any(differences(apart[0], apart[1], 0.15, ""))


class Program:
    """The built program, with nobody's own settings and book."""

    def __init__(self, path, home):
        self.path = str(pathlib.Path(path).resolve())
        self.environment = dict(os.environ, HOME=home, XDG_CONFIG_HOME=home, AppData=home)

    def run(self, *words):
        """Returns exit code, standard output and standard error."""
        done = subprocess.run([self.path, *words], capture_output=True, encoding="utf-8", env=self.environment, check=False)
        return done.returncode, done.stdout, done.stderr


class Case:
    """A sample job and what is to come of it."""

    def __init__(self, program, job):
        self.program, self.job = program, job
        self.want = json.loads(job.with_suffix(".expect.json").read_text(encoding="utf-8"))

    def faults(self, asked, senses):
        """Yields what is wrong, a line each. asked are the rules that the cases were worked out for,
        senses whether each of the program's rules asks for at least or at most."""
        if self.want["check"] is None:
            yield from self.refused("check")
            yield from self.refused("marks")
            return
        yield from self.check(asked, senses)
        yield from self.marks()
        if "suggest" in self.want:
            yield from self.suggest()

    def refused(self, command):
        code, out, complaint = self.program.run(command, "--json", str(self.job))
        if code != 1 or out or complaint.count("\n") != 1 or self.want["says"] not in complaint:
            yield f"{command}: exit {code}, {out[:60]!r}, {complaint!r}, where one line was to say {self.want['says']!r}"

    def answer(self, command):
        """Returns the exit code and the object of a command, which says nothing beside it."""
        code, out, complaint = self.program.run(command, "--json", str(self.job))
        if complaint or out.count("\n") != 1:
            raise ValueError(f"{command}: {complaint!r} and {out.count(chr(10))} lines, where one was to come")
        return code, json.loads(out)

    def check(self, asked, senses):
        code, got = self.answer("check")
        want = self.want["check"]
        if code != CODES[got["verdict"]]:
            yield f"check: exit {code} for {got['verdict']}"
        yield from differences({k: want[k] for k in ("format", "job", "verdict", "unchecked")}, got, 0, "check")
        yield from differences(sorted(want["not_looked_for"]), sorted(got["not_looked_for"]), 0, "not_looked_for")
        left = [f for f in got["findings"] if f["id"] in asked]
        pairs = []
        for finding in want["findings"]:
            found = nearest(finding, left)
            if found is None:
                yield f"no {finding['id']} of {finding['subject']} against {finding['against']}"
                continue
            left.remove(found)
            pairs.append((finding, found))
            yield from finding_faults(finding, found)
        yield from (f"too many: {f['id']} of {f['subject']} against {f['against']}" for f in left)
        yield from order_faults(got["findings"], pairs, senses)

    def marks(self):
        code, got = self.answer("marks")
        if code != 0:
            yield f"marks: exit {code}"
        want = self.want["marks"]
        for mark in want["marks"]:
            sigma = (mark.get("above") or {}).pop("sigma", None)
            if sigma is not None:
                there = [m["above"]["sigma"] for m in got["marks"] if m["name"] == mark["name"]]
                yield from differences([sigma], there, 0.02, f"{mark['name']} sigma")
        yield from differences(want, got, 0.05, "marks")

    def suggest(self):
        code, got = self.answer("suggest")
        if code != 0:
            yield f"suggest: exit {code}"
        want, places = self.want["suggest"]["places"], got["places"]
        yield from differences([p["margin"] for p in want], [p["margin"] for p in places], 1, "suggest margins")


def nearest(want, findings):
    """Returns the finding that is about the same as want, None where there is none."""
    alike = [f for f in findings if all(f[k] == want[k] for k in ONE_FINDING) and abs(f["required"] - want["required"]) < 1e-4]
    return min(alike, key=lambda f: abs(f["value"] - want["value"]), default=None)


def finding_faults(want, got):
    """Yields in what a finding differs."""
    name = f"{want['id']} {want['subject']} {want['against']}"
    within = value_within(want)
    yield from differences({k: want[k] for k in ("value", "margin")}, got, within, name)
    yield from differences({k: want[k] for k in ("sigma", "verdict")}, got, 0.02, name)
    if want["weight"] is not None:
        yield from differences(want["weight"], got["weight"], 0, name + " weight")
    if want["source"] == "this job":
        yield from differences(want["source"], got["source"], 0, name + " source")
    if want.get("at") is not None and not same_pair(want["at"], got["at"]):
        yield f"{name} at: {got['at']}, not {want['at']}"


def order_faults(findings, pairs, senses):
    """Yields where findings do not stand in the order of their danger, and where that is not the order of the case."""
    rank = [danger(f, senses) for f in findings]
    for i in range(1, len(rank)):
        if rank[i - 1] > rank[i]:
            yield f"{findings[i]['id']} {findings[i]['against']} stands behind what is less dangerous"
    place = {id(f): i for i, f in enumerate(findings)}
    for (want, got), (after, behind) in zip(pairs, pairs[1:]):
        if place[id(got)] < place[id(behind)] or want["verdict"] != after["verdict"]:
            continue
        weighed = got["weight"] != (want["weight"] or 2) or behind["weight"] != (after["weight"] or 2)
        if not weighed and abs(want["margin"] - after["margin"]) > 0.1:
            yield f"{want['id']} {want['against']} stands behind {after['id']} {after['against']}"


def danger(finding, senses):
    """The order of the contract: verdict, what touches, weight, margin; those without a margin last."""
    touches = finding["verdict"] != "clear" and finding["unit"] == "mm" and senses.get(finding["id"]) == "least" \
        and finding["value"] is not None and finding["value"] <= 0
    margin = math.inf if finding["margin"] is None else finding["margin"]
    return VERDICTS[finding["verdict"]], not touches, -finding["weight"], margin


def main(path, folder):
    """Compares every job of the folder and returns the exit code."""
    with tempfile.TemporaryDirectory() as home:
        program = Program(path, home)
        cases = [Case(program, job) for job in sorted(pathlib.Path(folder).glob("*.toml"))]
        if not cases:
            raise SystemExit(f"{folder}: no jobs there")
        asked = {f["id"] for c in cases if c.want["check"] for f in c.want["check"]["findings"]}
        senses = {rule["id"]: rule["sense"] for rule in json.loads(program.run("rules", "--json")[1])["rules"]}
        faults = [f"{case.job.name}: {fault}" for case in cases for fault in case.faults(asked, senses)]
    if not faults:
        print(f"{len(cases)} sample jobs come out as they were worked out")
    for fault in faults:
        print(fault, file=sys.stderr)
    return 1 if faults else 0


if __name__ == "__main__":
    if len(sys.argv) != 3:
        raise SystemExit("cases.py PROGRAM FOLDER")
    sys.exit(main(*sys.argv[1:]))
