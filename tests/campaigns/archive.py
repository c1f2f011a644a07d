#!/usr/bin/env python3
"""Makes the invented archive of two labs, audits it, and asks `trend` for what happened: the three stories and no fourth.

    python3 tests/campaigns/archive.py PROGRAM MAKER [--recordings 2000] [--seeds 101,102,103] [--keep FOLDER]

PROGRAM is the built channelaudit, MAKER the built tests/ChannelAudit.Calibration, whose program is called calibration (both `-c Release`). The seeds here judge: whoever changes a limit or the search after a look at what they gave
takes others. Ends with 1 when a story is missing, or there is another one. Python's standard library only.
"""
import argparse
import csv
import os
import shutil
import subprocess
import sys
import tempfile
import time

# Kind and name of what each story is about, and the measure that must be among its lines.
STORIES = {("electrode", "north", "C2", "rest_rms", "worse"), ("lab", "north", "north", "line_rms", "worse"), ("lab", "south", "south", "not_passed", "better")}


def run(*words):
    started = time.monotonic()
    done = subprocess.run(words, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        sys.exit(f"{' '.join(words)}: ended with {done.returncode}\n{done.stderr}")
    return done.stdout, time.monotonic() - started


def make(maker, folder, recordings, seed):
    """Writes recordings/, setup.toml and readings.tsv into a folder."""
    return run(maker, "--archive", folder, "--recordings", str(recordings), "--seed", str(seed))[1]


def screen(program, folder, out, *more):
    """Audits the whole archive on one machine; `more` may be a shard."""
    return run(program, "screen", os.path.join(folder, "recordings"), "--setup", os.path.join(folder, "setup.toml"),
               "--impedance", os.path.join(folder, "readings.tsv"), "--figures", "none", "--out", out, *more)[1]


def stories(program, audits, out):
    """What trend found: its text, and the stories that stand for themselves as sets of (by, lab, subject, measure, direction)."""
    text, took = run(program, "trend", *audits, "--out", out)
    found = {}
    with open(os.path.join(out, "trend-findings.tsv"), encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file, delimiter="\t"):
            if row["part_of"] == "n/a":
                found.setdefault(row["story"], set()).add((row["by"], row["lab"], row["subject"], row["measure"], row["direction"]))
    return text, list(found.values()), took


def judge(found):
    """Sentences about what is missing or too much; empty when the three stories are all there is."""
    faults = [f"not found: {wanted}" for wanted in sorted(STORIES) if not any(wanted in story for story in found)]
    return faults + [f"a fourth story: {sorted(story)}" for story in found if not story & STORIES]


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("program")
    parser.add_argument("maker")
    parser.add_argument("--recordings", type=int, default=2000)
    parser.add_argument("--seeds", default="101,102,103")
    parser.add_argument("--keep", help="keep everything in this folder")
    given = parser.parse_args()
    program, maker = os.path.abspath(given.program), os.path.abspath(given.maker)
    faults = 0
    for seed in given.seeds.split(","):
        work = os.path.join(given.keep, f"seed-{seed}") if given.keep else tempfile.mkdtemp()
        os.makedirs(work, exist_ok=True)
        made = make(maker, os.path.join(work, "archive"), given.recordings, seed)
        screened = screen(program, os.path.join(work, "archive"), os.path.join(work, "audit"))
        text, found, took = stories(program, [os.path.join(work, "audit")], os.path.join(work, "trend"))
        wrong = judge(found)
        faults += len(wrong)
        print(f"seed {seed}: {given.recordings} recordings made in {made:.0f} s, audited in {screened:.0f} s, compared in {took:.0f} s")
        print(text)
        print("\n".join(wrong) if wrong else "the three stories and no fourth", flush=True)
        if not given.keep:
            shutil.rmtree(work)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
