#!/usr/bin/env python3
"""Mutation testing with dotnet-stryker: changes one thing at a time in what measures, judges and records decisions, and looks whether a test fails.

    python3 tests/campaigns/mutation.py FOLDER [--jobs 2] [signals|measures|criteria|verdicts|decisions ...]

Works on a clone of the last commit in FOLDER. Each area is tried with the tests that are about it (AREAS) and nothing wider: whole runs of the program would notice more, for days. Prints a line an area: mutants that
were killed (by a failing test or by a time-out), that survived, that no test reaches; the score is killed of all. Survivors are listed in FOLDER/AREA.txt. Ends with 1 when a score is below 80 %.
Python's standard library only.
"""
import argparse
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
VERSION = "5.1.0"
LEAST = 80.0
# The project, the pattern of its files, and the folders of tests that are asked, by test project (none: all of them).
AREAS = {
    "signals": ("Signals", "**/*.cs", {"Signals": []}),
    "measures": ("Core", "Measures/**/*.cs", {"Core": ["Measures"]}),
    "criteria": ("Core", "Criteria/**/*.cs", {"Core": ["Criteria", "Drafts", "Findings", "Views"]}),
    "verdicts": ("Core", "Verdicts/**/*.cs", {"Core": ["Verdicts", "Lists", "Findings", "Pilot", "Acceptance"]}),
    "decisions": ("Core", "Decisions/**/*.cs", {"Core": ["Decisions", "Hostile"]}),
}


def stryker(folder):
    tools = folder / "tools"
    if not (tools / "dotnet-stryker").exists():
        subprocess.run(["dotnet", "tool", "install", "dotnet-stryker", "--version", VERSION, "--tool-path", tools], check=True, stdout=subprocess.DEVNULL)
    return tools / "dotnet-stryker"


# Files outside the area are left as they are: they would be changed, too, each change with a question in its way, and then ignored; the engine is ten times slower so.
def leave_others(source, pattern):
    chosen = set(source.glob(pattern))
    for file in source.rglob("*.cs"):
        text = file.read_text(encoding="utf-8-sig")
        if file not in chosen and "obj" not in file.relative_to(source).parts:
            file.write_text(re.sub(r"^namespace ", "// Stryker disable all\nnamespace ", text, count=1, flags=re.MULTILINE), encoding="utf-8-sig")


def run(folder, area, jobs):
    project, pattern, tests = AREAS[area]
    clone = folder / "clone"
    shutil.rmtree(clone, ignore_errors=True)
    subprocess.run(["git", "clone", "-q", ROOT, clone], check=True)
    source = clone / "src" / f"ChannelAudit.{project}"
    leave_others(source, pattern)
    names = [f"FullyQualifiedName~ChannelAudit.{name}.Tests.{part}." for name, parts in tests.items() for part in parts]
    config = {"stryker-config": {
        "test-projects": [f"../../tests/ChannelAudit.{name}.Tests/ChannelAudit.{name}.Tests.csproj" for name in tests], "mutate": [pattern], "configuration": "Release", "concurrency": jobs, "reporters": ["json", "dots"], "verbosity": "info",
        **({"test-case-filter": "|".join(names)} if names else {}),
    }}
    place = folder / f"{area}.json"
    place.write_text(json.dumps(config))
    out = folder / area
    shutil.rmtree(out, ignore_errors=True)
    with open(folder / f"{area}.log", "wb") as log:
        subprocess.run([stryker(folder), "-f", place, "--output", out, "--skip-version-check"], cwd=source, stdout=log, stderr=log, check=False,
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
