#!/usr/bin/env python3
"""Makes the invented archive of two labs, audits it, and asks `trend` for what happened: the three stories and no fourth.

    python3 tests/campaigns/archive.py PROGRAM MAKER [--recordings 2000] [--seeds 101,102,103] [--slurm] [--keep FOLDER]

PROGRAM is the built channelaudit, MAKER the built tests/ChannelAudit.Calibration, whose program is called calibration (both `-c Release`). The seeds here judge: whoever changes a limit or the search after a look at what they gave
takes others. With --slurm each archive is also audited in three shares on a Slurm of one node (see cluster.py for what that needs), one of them killed on the way and sent again; the merged audit must have the bytes of the
one of one machine, and is the one that trend reads. Ends with 1 when a story is missing, there is another one, or an audit differs. Python's standard library only.
"""
import argparse
import csv
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

import cluster

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


def screen_by_slurm(program, folder, work):
    """Audits the whole archive in three shares, by the job of docs/guides/cluster.md with the archive's own files: where the merged audit lies, and the seconds."""
    script = cluster.block("sh").replace("screen study --setup study/setup.toml", "screen recordings --setup setup.toml --impedance readings.tsv")
    if "readings.tsv" not in script:
        sys.exit("error: the job of docs/guides/cluster.md is not the one that is known here")
    work.mkdir()
    (work / "bin").mkdir()
    (work / "bin" / "channelaudit").symlink_to(program)
    for name in ("recordings", "setup.toml", "readings.tsv"):
        (work / name).symlink_to(pathlib.Path(folder, name))
    started = time.monotonic()
    cluster.by_slurm(work, dict(os.environ, PATH=f"{work / 'bin'}:{os.environ['PATH']}"), script)
    return work / "study-audit", time.monotonic() - started


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
    parser.add_argument("--slurm", action="store_true", help="audit it in shares too, and compare")
    parser.add_argument("--keep", help="keep everything in this folder")
    given = parser.parse_args()
    program, maker = os.path.abspath(given.program), os.path.abspath(given.maker)
    faults = 0
    for seed in given.seeds.split(","):
        work = os.path.abspath(os.path.join(given.keep, f"seed-{seed}")) if given.keep else tempfile.mkdtemp()
        os.makedirs(work, exist_ok=True)
        made = make(maker, os.path.join(work, "archive"), given.recordings, seed)
        screened = screen(program, os.path.join(work, "archive"), os.path.join(work, "audit"))
        audit, differ, shared = os.path.join(work, "audit"), [], ""
        if given.slurm:
            merged, seconds = screen_by_slurm(program, os.path.join(work, "archive"), pathlib.Path(work, "slurm"))
            differ = [f"not the bytes of one machine: {path}" for path in cluster.differences(pathlib.Path(audit), merged)] if merged.exists() else ["no merged audit"]
            audit, shared = str(merged), f", in three shares under Slurm, one killed and sent again, and merged in {seconds:.0f} s ({'other' if differ else 'the same'} bytes)"
        text, found, took = stories(program, [audit], os.path.join(work, "trend"))
        wrong = differ[:10] + judge(found)
        faults += len(wrong)
        print(f"seed {seed}: {given.recordings} recordings made in {made:.0f} s, audited in {screened:.0f} s{shared}, compared in {took:.0f} s")
        print(text)
        print("\n".join(wrong) if wrong else "the three stories and no fourth", flush=True)
        if not given.keep:
            shutil.rmtree(work)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
