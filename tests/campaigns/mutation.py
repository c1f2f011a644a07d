#!/usr/bin/env python3
"""Mutation testing with dotnet-stryker: changes one thing at a time in what measures, judges and records decisions, and looks whether a test fails.

    python3 tests/campaigns/mutation.py FOLDER [--jobs 2] [signals|measures|criteria|verdicts|decisions ...]

Works on a clone of the last commit in FOLDER. Each area is tried with the tests of its own folder and nothing wider: whole runs of the engine would notice more, for hours. Prints a line an area: mutants that
were killed (by a failing test or by a time-out), that survived, that no test reaches; the score is killed of all. Survivors are listed in FOLDER/AREA.txt. Ends with 1 when a score is below 80 %.
Python's standard library only.
"""
import argparse
import json
import os
import pathlib
import shutil
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
VERSION = "5.1.0"
LEAST = 80.0
# The project, the pattern of its files, and the tests that are asked (nothing: all of the test project).
AREAS = {
    "signals": ("ChannelAudit.Signals", "**/*.cs", None),
    "measures": ("ChannelAudit.Core", "Measures/**/*.cs", "Measures"),
    "criteria": ("ChannelAudit.Core", "Criteria/**/*.cs", "Criteria"),
    "verdicts": ("ChannelAudit.Core", "Verdicts/**/*.cs", "Verdicts"),
    "decisions": ("ChannelAudit.Core", "Decisions/**/*.cs", "Decisions"),
}


def stryker(folder):
    tools = folder / "tools"
    if not (tools / "dotnet-stryker").exists():
        subprocess.run(["dotnet", "tool", "install", "dotnet-stryker", "--version", VERSION, "--tool-path", tools], check=True, stdout=subprocess.DEVNULL)
    return tools / "dotnet-stryker"


def run(folder, area, jobs):
    project, pattern, tests = AREAS[area]
    config = {"stryker-config": {
        "project": f"{project}.csproj", "mutate": [pattern], "configuration": "Release", "concurrency": jobs, "reporters": ["json", "progress"], "verbosity": "info",
        **({"test-case-filter": f"FullyQualifiedName~.{tests}."} if tests else {}),
    }}
    place = folder / f"{area}.json"
    place.write_text(json.dumps(config))
    out = folder / area
    shutil.rmtree(out, ignore_errors=True)
    with open(folder / f"{area}.log", "wb") as log:
        subprocess.run([stryker(folder), "-f", place, "--output", out, "--skip-version-check"], cwd=folder / "clone" / "tests" / f"{project}.Tests", stdout=log, stderr=log, check=False,
                       env=dict(os.environ, RunAnalyzers="false"))
    return next(iter(sorted(out.rglob("mutation-report.json"))), None)


def judge(report, area, folder):
    counts, left = {}, []
    for name, file in sorted(json.loads(report.read_text(encoding="utf-8-sig"))["files"].items()):
        lines = file["source"].split("\n")
        for mutant in file["mutants"]:
            counts[mutant["status"]] = counts.get(mutant["status"], 0) + 1
            if mutant["status"] in ("Survived", "NoCoverage"):
                line = mutant["location"]["start"]["line"]
                left.append(f"{mutant['status']} {os.path.basename(name)}:{line} {mutant['mutatorName']}\n    {lines[line - 1].strip()}\n    -> {' '.join(str(mutant.get('replacement', '')).split())[:200]}")
    (folder / f"{area}.txt").write_text("\n".join(left) + "\n", encoding="utf-8")
    killed = counts.get("Killed", 0) + counts.get("Timeout", 0)
    survived, unreached = counts.get("Survived", 0), counts.get("NoCoverage", 0)
    score = 100.0 * killed / max(1, killed + survived + unreached)
    print(f"{area}: {killed} killed, {survived} survived, {unreached} not reached: {score:.1f} %", flush=True)
    return score


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("folder", type=pathlib.Path)
    words.add_argument("areas", nargs="*")
    words.add_argument("--jobs", type=int, default=2)
    given = words.parse_intermixed_args()
    folder = given.folder.resolve()
    folder.mkdir(parents=True, exist_ok=True)
    shutil.rmtree(folder / "clone", ignore_errors=True)
    subprocess.run(["git", "clone", "-q", ROOT, folder / "clone"], check=True)
    low = 0
    for area in given.areas or AREAS:
        report = run(folder, area, given.jobs)
        if report is None:
            print(f"{area}: no report, see {folder / area}.log", flush=True)
        if report is None or judge(report, area, folder) < LEAST:
            low += 1
    return 1 if low else 0


if __name__ == "__main__":
    sys.exit(main())
