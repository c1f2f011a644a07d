#!/usr/bin/env python3
"""Mutation testing with dotnet-stryker: changes one thing at a time in what measures, judges and records decisions, and looks whether a test fails.

    python3 tests/campaigns/mutation.py FOLDER [--jobs 2] [--kept] [signals|measures|criteria|verdicts|decisions|signals/Spectra ...]

Works on a clone of the last commit in FOLDER. Each area is tried with the tests that are about it (AREAS) and nothing wider: whole runs of the program would notice more, for days. An area of several folders is tried
folder by folder, one of many files by their first letters, each of which can be named alone; with --kept a part that has its report keeps it. Prints a line a part and an area: mutants that were killed (by a
failing test or by a time-out, which on a busy machine may be the machine's), that survived, that no test reaches; the score is killed of all. Survivors and time-outs are listed in FOLDER/AREA.txt. Ends with 1 when a score is below 80 %.
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
# The project, the patterns of its files by part, and the folders of tests that are asked, by test project (none: the one of the part's name).
AREAS = {
    "signals": ("Signals", {name: [f"{name}/**/*.cs"] for name in ["Arithmetic", "Filters", "Lines", "Random", "Spectra", "Statistics", "Trends"]}, {"Signals": []}),
    # Without the catalog, a table of names and words that only pages and tables show.
    "measures": ("Core", {"M": ["Measures/MeasureD*.cs", "Measures/Mo*.cs"], **{name: [f"Measures/[{name}]*.cs"] for name in ["BC", "DEF", "KL", "NP", "RSW"]}}, {"Core": ["Measures", "Criteria"]}),
    "criteria": ("Core", {"Criteria": ["Criteria/**/*.cs"]}, {"Core": ["Criteria", "Findings"]}),
    "verdicts": ("Core", {"Verdicts": ["Verdicts/**/*.cs"]}, {"Core": ["Verdicts", "Lists", "Findings"]}),
    "decisions": ("Core", {"Decisions": ["Decisions/**/*.cs"]}, {"Core": ["Decisions", "Hostile"]}),
}


def stryker(folder):
    tools = folder / "tools"
    if not (tools / "dotnet-stryker").exists():
        subprocess.run(["dotnet", "tool", "install", "dotnet-stryker", "--version", VERSION, "--tool-path", tools], check=True, stdout=subprocess.DEVNULL)
    return tools / "dotnet-stryker"


# Files outside the area are left as they are: they would be changed, too, each change with a question in its way, and then ignored; the engine is ten times slower so.
def leave_others(source, patterns):
    chosen = {file for pattern in patterns for file in source.glob(pattern)}
    for file in source.rglob("*.cs"):
        text = file.read_text(encoding="utf-8-sig")
        if file not in chosen and "obj" not in file.relative_to(source).parts:
            file.write_text(re.sub(r"^namespace ", "// Stryker disable all\nnamespace ", text, count=1, flags=re.MULTILINE), encoding="utf-8-sig")


# Tests that are not asked are hidden from the runner, which else looks for thousands of them before each change.
def hide_others(source, groups):
    for file in source.rglob("*.cs"):
        place = file.relative_to(source).parts
        if place[0] not in groups and "obj" not in place:
            text = file.read_text(encoding="utf-8-sig")
            file.write_text(re.sub(r"^public (sealed )?class (\w+Tests)\b", r"internal \1class \2", text, flags=re.MULTILINE), encoding="utf-8-sig")


def run(folder, project, part, patterns, tests, jobs):
    clone = folder / "clone"
    shutil.rmtree(clone, ignore_errors=True)
    subprocess.run(["git", "clone", "-q", ROOT, clone], check=True)
    source = clone / "src" / f"ChannelAudit.{project}"
    leave_others(source, patterns)
    for name, groups in tests.items():
        hide_others(clone / "tests" / f"ChannelAudit.{name}.Tests", groups or [part])
    config = {"stryker-config": {
        "test-projects": [f"../../tests/ChannelAudit.{name}.Tests/ChannelAudit.{name}.Tests.csproj" for name in tests], "mutate": patterns, "configuration": "Release", "concurrency": jobs, "reporters": ["json", "dots"], "verbosity": "info",
    }}
    place = folder / f"{part}.json"
    place.write_text(json.dumps(config))
    out = folder / part
    shutil.rmtree(out, ignore_errors=True)
    with open(folder / f"{part}.log", "wb") as log:
        subprocess.run([stryker(folder), "-f", place, "--output", out, "--skip-version-check"], cwd=source, stdout=log, stderr=log, check=False,
                       env=dict(os.environ, RunAnalyzers="false"))


def report(folder, part):
    return next(iter(sorted((folder / part).rglob("mutation-report.json"))), None)


# Killed, survived, not reached, and those of the killed that ran out of time; then all that no test failed for, each with its line and what stood there instead.
def read(place):
    counts, left = {}, []
    for name, file in sorted(json.loads(place.read_text(encoding="utf-8-sig"))["files"].items()):
        lines = file["source"].split("\n")
        for mutant in file["mutants"]:
            counts[mutant["status"]] = counts.get(mutant["status"], 0) + 1
            if mutant["status"] in ("Survived", "NoCoverage", "Timeout"):
                line = mutant["location"]["start"]["line"]
                left.append(f"{mutant['status']} {os.path.basename(name)}:{line} {mutant['mutatorName']}\n    {lines[line - 1].strip()}\n    -> {' '.join(str(mutant.get('replacement', '')).split())[:200]}")
    return [counts.get("Killed", 0) + counts.get("Timeout", 0), counts.get("Survived", 0), counts.get("NoCoverage", 0), counts.get("Timeout", 0)], left


def tell(name, counts):
    killed, survived, unreached, late = counts
    score = 100.0 * killed / max(1, killed + survived + unreached)
    print(f"{name}: {killed} killed ({late} by time), {survived} survived, {unreached} not reached: {score:.1f} %", flush=True)
    return score


def judge(folder, area, wanted, jobs, kept):
    project, parts, tests = AREAS[area]
    totals, left = [0, 0, 0, 0], []
    for part, patterns in parts.items():
        if wanted and part != wanted:
            continue
        if not kept or report(folder, part) is None:
            run(folder, project, part, patterns, tests, jobs)
        place = report(folder, part)
        if place is None:
            print(f"{area}: no report of {part}, see {folder / part}.log", flush=True)
            return 0.0
        counts, those = read(place)
        if len(parts) > 1:
            tell(f"  {part}", counts)
        totals = [sum(pair) for pair in zip(totals, counts)]
        left += those
        (folder / f"{area}.txt").write_text("\n".join(left) + "\n", encoding="utf-8")
    return tell(area, totals)


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("folder", type=pathlib.Path)
    words.add_argument("areas", nargs="*")
    words.add_argument("--jobs", type=int, default=2)
    words.add_argument("--kept", action="store_true", help="a part of an area that has its report in FOLDER is not tried again")
    given = words.parse_intermixed_args()
    folder = given.folder.resolve()
    folder.mkdir(parents=True, exist_ok=True)
    scores = [judge(folder, *f"{name}/".split("/")[:2], given.jobs, given.kept) for name in given.areas or AREAS]
    return 1 if min(scores) < LEAST else 0


if __name__ == "__main__":
    sys.exit(main())
