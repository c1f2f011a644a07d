#!/usr/bin/env python3
"""Coverage-guided fuzzing of the readers with afl-fuzz (Debian's afl++) and SharpFuzz.

    python3 tests/campaigns/fuzz.py PROGRAM FOLDER [--minutes 30] [--longest 90] [--jobs 2] [TARGET...]

Builds tests/ChannelAudit.Fuzz, instruments the project's assemblies in a copy, makes seeds with PROGRAM (channelaudit) and from tests/ChannelAudit.Fuzz/seeds, and fuzzes each
reader for that long and on until 10 minutes have found no new path, or the longest time is over. Minutes are minutes of CPU of the fuzzer and the reader, so that other work on the machine shortens nothing.
A path is an input that reached something, or something more or less often, than all before it; an edge is a branch that no input had taken. What was found lies in FOLDER/TARGET. An input that was stopped is read again three times, alone: it is a hang when the quickest takes over 2 s more than an empty one. Prints one line a
target: minutes, runs, paths and edges with the minutes since the last new one, crashes, hangs. Ends with 1 when there was a crash or a hang. Python's standard library only.
"""
import argparse
import io
import os
import random
import shutil
import subprocess
import sys
import time
import zipfile

ROOT = os.path.dirname(os.path.dirname(os.path.dirname(os.path.abspath(__file__))))
PROJECT = os.path.join(ROOT, "tests", "ChannelAudit.Fuzz")
TARGETS = ["edf", "bdf", "text", "events", "channels", "setup", "criteria", "readings", "ledger", "decisions", "exclusions", "labels", "bundle", "audit", "result"]
PATHS, EDGES = "corpus_count", "edges_found"
QUIET_MINUTES = 10
SLOW_SECONDS = 2
LARGEST_SEED = 16384


def build(folder):
    program = os.path.join(folder, "program")
    shutil.rmtree(program, ignore_errors=True)
    subprocess.run(["dotnet", "publish", PROJECT, "-c", "Release", "-p:RunAnalyzers=false", "-p:PublishReadyToRun=false", "-o", program, "-v", "q"], check=True)
    tools = os.path.join(folder, "tools")
    if not os.path.exists(os.path.join(tools, "sharpfuzz")):
        subprocess.run(["dotnet", "tool", "install", "SharpFuzz.CommandLine", "--tool-path", tools], check=True)
    for name in ["ChannelAudit.Signals.dll", "ChannelAudit.Core.dll", "ChannelAudit.Reports.dll"]:
        subprocess.run([os.path.join(tools, "sharpfuzz"), os.path.join(program, name)], check=True)
    return os.path.join(program, "fuzz")


def seeds(program, folder):
    work = os.path.join(folder, "seeds")
    shutil.rmtree(work, ignore_errors=True)
    os.makedirs(work)
    demo = os.path.join(folder, "demo")
    if not os.path.isdir(demo):
        subprocess.run([program, "demo", demo], check=True, stdout=subprocess.DEVNULL)
    kinds = {"edf": "edf", "_events.tsv": "events", "setup.toml": "setup", "lab.toml": "criteria", "exclusions.tsv": "exclusions"}
    number = 0
    for place, _, names in os.walk(demo):
        for name in sorted(names):
            kind = next((kind for end, kind in kinds.items() if name.endswith(end)), "readings" if "impedance" in place and name.endswith(".tsv") else None)
            if kind:
                number += 1
                put(work, kind, f"demo{number}-{name}", open(os.path.join(place, name), "rb").read()[:LARGEST_SEED])
    made(program, os.path.join(folder, "made"), work)
    stored = os.path.join(PROJECT, "seeds")
    for kind in sorted(os.listdir(stored)) if os.path.isdir(stored) else []:
        for name in sorted(os.listdir(os.path.join(stored, kind))):
            put(work, kind, name, open(os.path.join(stored, kind, name), "rb").read())
    return work


# What only the program can make: a hash-chained ledger, a bundle, and an audit's own files, of one channel of three seconds.
def made(program, folder, work):
    shutil.rmtree(folder, ignore_errors=True)
    os.makedirs(os.path.join(folder, "study"))
    noise = random.Random(1)
    with open(os.path.join(folder, "study", "T1.csv"), "w", encoding="utf-8") as file:
        file.write("cheek (uV)\n" + "".join(f"{noise.gauss(0, 3):.1f}\n" for _ in range(600)))
    with open(os.path.join(folder, "setup.toml"), "w", encoding="utf-8") as file:
        file.write('[recording]\nsampling_hz = 200.0\n\n[trials]\nfrom = "blocks"\n')

    def run(*words):
        subprocess.run([program, *words], check=True, stdout=subprocess.DEVNULL, cwd=folder)

    run("screen", "study", "--setup", "setup.toml", "--out", "audit", "--figures", "none")
    for trial, verdict in (("1", "reject"), (None, "questionable")):
        run("decide", "audit", "--recording", "T1", "--channel", "cheek", *(["--trial", trial] if trial else []), "--verdict", verdict, "--by", "R.Viewer", "--reason", f"found {verdict}")
    run("decide", "audit", "--withdraw", "2", "--by", "S.Econd", "--reason", "not so")
    run("export", "bundle", "audit", "--data", "study", "--to", "bundle.zip")
    for kind, name in (("ledger", "audit/decisions.jsonl"), ("audit", "audit/audit.json"), ("result", "audit/recordings/T1/result.json"), ("bundle", "bundle.zip")):
        with open(os.path.join(folder, name), "rb") as file:
            put(work, kind, "made-" + os.path.basename(name), file.read())
    # The same bundle unpacked, so that a changed byte is a changed word and no broken stream.
    plain = io.BytesIO()
    with zipfile.ZipFile(os.path.join(folder, "bundle.zip")) as packed, zipfile.ZipFile(plain, "w") as stored:
        for entry in packed.infolist():
            if entry.filename == "bundle.json":
                stored.writestr(zipfile.ZipInfo(entry.filename), packed.read(entry))
    put(work, "bundle", "made-unpacked.zip", plain.getvalue())


def put(work, kind, name, content):
    os.makedirs(os.path.join(work, kind), exist_ok=True)
    with open(os.path.join(work, kind, name), "wb") as file:
        file.write(content)


def start(fuzz, work, target, folder):
    inputs = os.path.join(work, target)
    if not os.path.isdir(inputs):
        put(work, target, "empty", b"\n")
    out = os.path.join(folder, target)
    shutil.rmtree(out, ignore_errors=True)
    environment = dict(os.environ, AFL_SKIP_BIN_CHECK="1", AFL_NO_UI="1", AFL_I_DONT_CARE_ABOUT_MISSING_CRASHES="1", AFL_SKIP_CPUFREQ="1", AFL_NO_AFFINITY="1",
                       DOTNET_TieredCompilation="1", DOTNET_gcConcurrent="0", AFL_HANG_TMOUT=str(1000 * SLOW_SECONDS))
    log = open(os.path.join(folder, target + ".log"), "wb")
    return subprocess.Popen(["afl-fuzz", "-i", inputs, "-o", out, "-t", "2000", "-m", "none", fuzz, target], env=environment, stdout=log, stderr=log)


def stats(folder, target):
    path = os.path.join(folder, target, "default", "fuzzer_stats")
    if not os.path.exists(path):
        return {}
    with open(path, encoding="utf-8") as file:
        return {line.split(":")[0].strip(): line.split(":", 1)[1].strip() for line in file if ":" in line}


class Run:
    """A reader that is fuzzed: the process, and when in its own CPU time it found its last new path and edge."""

    def __init__(self, process):
        self.process, self.minutes = process, 0.0
        self.counts, self.last_new = {}, {PATHS: 0.0, EDGES: 0.0}

    def look(self, found):
        self.minutes = max(self.minutes, cpu_seconds(self.process.pid) / 60)
        for kind in self.last_new:
            if found.get(kind, "") != self.counts.get(kind, ""):
                self.counts[kind], self.last_new[kind] = found[kind], self.minutes

    def quiet(self, kind):
        return self.minutes - self.last_new[kind]


# Of a process and its children, those that have ended among them (proc(5): fields 14 to 17 of stat).
def cpu_seconds(pid):
    try:
        with open(f"/proc/{pid}/stat", encoding="ascii", errors="replace") as file:
            own = sum(int(field) for field in file.read().rsplit(")", 1)[1].split()[11:15])
        with open(f"/proc/{pid}/task/{pid}/children", encoding="ascii") as file:
            children = file.read().split()
    except OSError:
        return 0
    return own / os.sysconf("SC_CLK_TCK") + sum(cpu_seconds(child) for child in children)


def seconds(fuzz, target, content):
    started = time.perf_counter()
    subprocess.run([fuzz, target], input=content, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, timeout=120)
    return time.perf_counter() - started


def confirmed_hangs(fuzz, target, folder):
    place = os.path.join(folder, target, "default", "hangs")
    names = sorted(name for name in os.listdir(place) if name.startswith("id")) if os.path.isdir(place) else []
    hangs = []
    for name in names:
        with open(os.path.join(place, name), "rb") as file:
            content = file.read()
        if min(seconds(fuzz, target, content) - seconds(fuzz, target, b"") for _ in range(3)) > SLOW_SECONDS:
            hangs.append(name)
    return hangs


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("folder")
    words.add_argument("targets", nargs="*")
    words.add_argument("--minutes", type=float, default=30)
    words.add_argument("--longest", type=float, default=90, help="minutes after which a reader is left although there are still new paths")
    words.add_argument("--jobs", type=int, default=2)
    words.add_argument("--built", action="store_true", help="take the program that an earlier campaign built in FOLDER")
    given = words.parse_intermixed_args()
    os.makedirs(given.folder, exist_ok=True)
    fuzz = os.path.join(given.folder, "program", "fuzz") if given.built else build(given.folder)
    work = seeds(os.path.abspath(given.program), given.folder)
    waiting, running, faults = list(given.targets or TARGETS), {}, 0
    while waiting or running:
        while waiting and len(running) < given.jobs:
            target = waiting.pop(0)
            running[target] = Run(start(fuzz, work, target, given.folder))
        time.sleep(2)
        for target, run in list(running.items()):
            run.look(stats(given.folder, target))
            is_quiet = run.quiet(PATHS) >= min(QUIET_MINUTES, given.minutes)
            if run.process.poll() is None and (run.minutes < given.minutes or (not is_quiet and run.minutes < given.longest)):
                continue
            if run.process.poll() is None:
                run.process.terminate()
                run.process.wait()
            found = stats(given.folder, target)
            crashes, hangs = int(found.get("saved_crashes", 0)), confirmed_hangs(fuzz, target, given.folder)
            faults += crashes + len(hangs) + (0 if found else 1)
            print(f"{target}: {run.minutes:.0f} min, {found.get('execs_done', 'no')} runs, {found.get(PATHS, '?')} paths, {run.quiet(PATHS):.0f} min since the last new one, "
                  f"{found.get(EDGES, '?')} edges, {run.quiet(EDGES):.0f} min, "
                  f"{crashes} crashes, {len(hangs)} hangs {' '.join(hangs)}".rstrip(), flush=True)
            del running[target]
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
