#!/usr/bin/env python3
"""Writes millions of rows as Parquet and looks at the memory that it takes.

    python3 tests/campaigns/parquet.py PROGRAM [--recordings 15 73] [--hour FILE] [--in FOLDER]

Makes one recording of an hour (4 channels, 360 trials, 69 000 rows of measures), gives it many names, has each audited once as a share of a run, and merges it with and without
--parquet: 15 recordings are a million rows, 73 are five. Peak memory with --parquet must not grow with the number of rows: at five million at most a tenth and 16 MiB more than at one.
Where node and the package of fixtures/parquet are installed the rows are counted by another reader and held to the tables. Ends with 1 when a limit was passed.
Needs dotnet for the maker of the recording, 3 GB of disk and some ten minutes. Linux, Python's standard library only.
"""
import argparse
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
MIB = 1 << 20
MOST_TIMES, MOST_MORE = 1.1, 16 * MIB
TABLES = ("verdicts", "measures", "pairs")


def measured(*words):
    started = time.monotonic()
    process = subprocess.Popen(words, stdout=subprocess.DEVNULL)
    _, status, usage = os.wait4(process.pid, 0)
    if os.waitstatus_to_exitcode(status) != 0:
        raise SystemExit(f"{words}: code {os.waitstatus_to_exitcode(status)}")
    return usage.ru_maxrss * 1024, usage.ru_utime + usage.ru_stime, time.monotonic() - started


def lines(folder, table):
    if table == "verdicts":
        paths = [os.path.join(folder, "verdicts.tsv")]
    else:
        recordings = os.path.join(folder, "recordings")
        paths = [os.path.join(recordings, name, f"{table}.tsv") for name in sorted(os.listdir(recordings))]
    count = 0
    for path in paths:
        with open(path, "rb") as file:
            count += sum(1 for _ in file) - 1
    return count


def rows(path):
    reader = os.path.join(ROOT, "fixtures", "parquet", "read.mjs")
    if not os.path.isdir(os.path.join(os.path.dirname(reader), "node_modules")):
        return None
    found = json.loads(subprocess.run(["node", reader, path, "--count"], capture_output=True, text=True, check=True).stdout)
    return sum(found["groups"])


def merged(program, folder, hour, recordings):
    study = os.path.join(folder, f"study-{recordings}")
    os.makedirs(study)
    for number in range(recordings):
        os.link(hour, os.path.join(study, f"R{number:04}.edf"))
    shares = [os.path.join(folder, f"share-{recordings}-{number}") for number in (1, 2)]
    for number, share in enumerate(shares, 1):
        measured(program, "screen", study, "--figures", "none", "--shard", f"{number}/2", "--out", share)
    plain, typed = os.path.join(folder, f"plain-{recordings}"), os.path.join(folder, f"typed-{recordings}")
    before = measured(program, "merge", *shares, "--out", plain)
    after = measured(program, "merge", *shares, "--parquet", "--out", typed)
    faults = []
    for table in TABLES:
        path = os.path.join(typed, f"{table}.parquet")
        expected, found = lines(typed, table), rows(path)
        print(f"{recordings} recordings, {table}.parquet: {expected} rows, {os.path.getsize(path) / MIB:.1f} MiB"
              + ("" if found is None else f"; another reader counts {found}"))
        if found not in (None, expected):
            faults.append(f"{table}.parquet has {found} rows, the tables have {expected}")
    for what, (peak, cpu, wall) in (("merge", before), ("merge --parquet", after)):
        print(f"{recordings} recordings, {what}: {peak / MIB:.0f} MiB at most, {cpu:.1f} s of CPU, {wall:.1f} s")
    return after[0], faults


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("--recordings", nargs=2, type=int, default=[15, 73])
    words.add_argument("--hour", help="a recording made before")
    words.add_argument("--in", dest="folder")
    given = words.parse_args()
    if given.folder:
        os.makedirs(given.folder, exist_ok=True)
    with tempfile.TemporaryDirectory(dir=given.folder) as folder:
        hour = os.path.join(folder, "hour.edf")
        if given.hour:
            shutil.copy(given.hour, hour)
        else:
            subprocess.run(["dotnet", "run", "-c", "Release", "--project", os.path.join(ROOT, "tests", "ChannelAudit.Benchmarks"), "--",
                            "make", "recording", hour, "3600", "4"], check=True)
        few, many = (merged(os.path.abspath(given.program), folder, hour, recordings) for recordings in given.recordings)
    faults = [*few[1], *many[1]]
    if many[0] > few[0] * MOST_TIMES + MOST_MORE:
        faults.append(f"memory grows with the rows: {few[0] / MIB:.0f} MiB, then {many[0] / MIB:.0f} MiB")
    for fault in faults:
        print(f"FAULT: {fault}")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
