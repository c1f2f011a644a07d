#!/usr/bin/env python3
"""Runs the same commands under time zones, languages, dates, folders, masks, numbers of threads, processors and compilers, and compares every byte.

    python3 tests/campaigns/same_bytes.py PROGRAM [NATIVE] [--short] [--only WORD]

PROGRAM is the ordinary build, NATIVE one that was compiled ahead of time. Compared are all files by SHA-256, what was said on both streams, and exit codes. A line of the ledger holds
when it was written: `decide` is compared without the times and the hashes over them, and what follows from decisions with one ledger that was made before. --short puts several settings
into each of a few runs, for CI; else each has a run of its own. Ends with 1 when anything differs. The date needs Debian's `faketime`; without it that is said.
Python's standard library only.
"""
import argparse
import concurrent.futures
import hashlib
import json
import os
import shutil
import subprocess
import sys
import tempfile
import time

SHORT = ("K07", "K11")
LABELS = "recording\tchannel\ttrial\trater\tlabel\n" + "".join(
    f"K07\tcheek\t{trial}\tA\t{'bad' if trial > 15 else 'good'}\nK07\tcheek\t{trial}\tB\tunsure\n" for trial in range(1, 30))
EXCLUSIONS = "Recording;Channel;Trial;Reason\r\nK07;cheek;;lead came loose\r\nK11.edf;eye;4,0;\r\nK99;;;who?\r\n"
DECISION = ["--recording", "K07", "--channel", "cheek", "--trial", "3", "--verdict", "questionable", "--by", "İ. Viewer", "--reason", "Iğdır: 3,5 µV"]


class Setting:
    """One way to run: environment, mask of new files, options, the folder, a program in front."""

    def __init__(self, name, env=None, umask=0o022, jobs="2", folder="work", front=(), program=None, absolute=False):
        self.name, self.env, self.umask, self.jobs, self.folder, self.front, self.program, self.absolute = name, env or {}, umask, jobs, folder, front, program, absolute


def faked(date):
    return ("faketime", "--exclude-monotonic", "-f", date)


def settings(native, short):
    can_fake = shutil.which("faketime") is not None
    if not can_fake:
        print("not tried: another date (faketime is not installed)")
    if short:
        return [
            Setting("Kiritimati, Turkish, mask 077, one thread, blanks, no wide registers", {"TZ": "Pacific/Kiritimati", "LC_ALL": "tr_TR.UTF-8", "DOTNET_EnableAVX2": "0"}, 0o077, "1", "a b"),
            Setting("St. John's, German, other culture data, mask 000, letters, another date", {
                "TZ": "America/St_Johns", "LC_ALL": "de_DE.UTF-8", "DOTNET_SYSTEM_GLOBALIZATION_INVARIANT": "0"},
                0o000, "4", "für müde øyne", faked("2031-12-31 23:59:58") if can_fake else ()),
            *([Setting("native", program=native)] if native else []),
        ]
    return [
        Setting("again"),
        *[Setting(f"TZ {zone}", {"TZ": zone}) for zone in ("UTC", "Pacific/Kiritimati", "America/St_Johns")],
        *[Setting(f"language {code}", {"LANG": f"{code}.UTF-8", "LC_ALL": f"{code}.UTF-8"}) for code in ("de_DE", "tr_TR", "ar_SA", "fa_IR", "C")],
        *[Setting(f"language {code}, culture data of the system", {"LC_ALL": f"{code}.UTF-8", "DOTNET_SYSTEM_GLOBALIZATION_INVARIANT": "0"}) for code in ("de_DE", "tr_TR", "fa_IR")],
        Setting("culture data left out", {"DOTNET_SYSTEM_GLOBALIZATION_INVARIANT": "1"}),
        *[Setting(f"{jobs} threads", jobs=jobs) for jobs in ("1", "3", "16")],
        Setting("one processor", {"DOTNET_PROCESSOR_COUNT": "1"}),
        Setting("folder with blanks", folder="a b  c"),
        Setting("folder with other letters", folder="für müde øyne 目"),
        Setting("folder with signs", folder="a%20b&c#d'e$(f)[g]"),
        Setting("absolute paths", absolute=True),
        *[Setting(f"mask {umask:03o}", umask=umask) for umask in (0o077, 0o000)],
        *([Setting(f"date {date}", front=faked(date)) for date in ("2001-01-01 00:00:01", "2031-12-31 23:59:58")] if can_fake else []),
        *[Setting(f"{name}={value}", {f"DOTNET_{name}": value}) for name, value in (
            ("TieredPGO", "0"), ("TieredCompilation", "1"), ("ReadyToRun", "0"), ("EnableAVX512F", "0"), ("EnableAVX2", "0"), ("EnableAVX", "0"), ("EnableHWIntrinsic", "0"), ("gcServer", "1"))],
        *([Setting("native", program=native), Setting("native, one thread, Turkish, blanks", {"LC_ALL": "tr_TR.UTF-8"}, jobs="1", folder="a b", program=native)] if native else []),
    ]


class Campaign:
    def __init__(self, program, native, short, work):
        self.program, self.native, self.short, self.work = program, native, short, work
        self.ledger = None

    def commands(self, setting, place):
        def at(path):
            return os.path.join(place, path) if setting.absolute else path
        setup = ["--setup", at("demo/study/setup.toml")]
        yield ["screen", at("demo/study/K07.edf"), *setup, "--impedance", at("demo/impedance/K07.tsv"), "--figures", "all", "--out", at("sheets"), "--jobs", setting.jobs]
        yield ["pilot", at("demo/study/K11.edf"), *setup, "--out", at("pilot")]
        yield ["screen", at("demo/study"), *setup, "--figures", "none", "--out", at("plain"), "--jobs", setting.jobs]
        yield ["decide", at("plain"), *DECISION]
        yield ["screen", at("demo/study"), *setup, "--parquet", "--out", at("decided"), "--jobs", setting.jobs]
        yield ["decide", at("decided")]
        yield ["export", "bundle", at("decided"), "--data", at("demo/study"), "--to", at("bundle.zip")]
        yield ["export", "bids", at("decided"), "--to", at("bids")]
        yield ["reconcile", at("decided"), at("exclusions.csv"), "--out", at("answers.tsv")]
        yield ["raters", at("decided"), at("labels.tsv"), "--out", at("raters")]
        yield ["setup", "new", at("demo/study/K07.edf"), "--out", at("new.toml")]
        yield ["impedance", at("demo/impedance/K07.tsv"), *setup]
        yield ["criteria", "show"]
        if not self.short:
            yield ["demo", at("made")]
            yield ["verify", at("decided"), "--data", at("demo/study")]
            yield ["screen", at("demo/study/K15.edf"), "--criteria", at("demo/lab.toml"), "--out", at("lab"), "--fail-on", "reject"]
            yield ["explain", "bridge"]

    def run(self, setting):
        """Runs every command in a folder of its own; gives what was said and the SHA-256 of what was written."""
        with tempfile.TemporaryDirectory(dir=self.work) as own:
            place = os.path.join(own, setting.folder)
            self.prepare(place)
            found = {}
            for words in self.commands(setting, place):
                done = self.call(setting, place, words)
                if not setting.absolute and "plain" not in words[1]:
                    said = done.stdout + b"\n--\n" + done.stderr + b"\n--\n%d" % done.returncode
                    found["said: " + " ".join(words).replace(f" --jobs {setting.jobs}", "")] = hashlib.sha256(said).hexdigest()
            return {**found, **content(place)}

    def prepare(self, place):
        shutil.copytree(os.path.join(self.work, "demo"), os.path.join(place, "demo"))
        os.makedirs(os.path.join(place, "decided"))
        shutil.copy(self.ledger, os.path.join(place, "decided"))
        for name, text in (("labels.tsv", LABELS), ("exclusions.csv", EXCLUSIONS)):
            with open(os.path.join(place, name), "w", encoding="utf-8", newline="") as file:
                file.write(text)

    def call(self, setting, place, words):
        environment = {name: value for name, value in os.environ.items() if name not in ("TZ", "LANG", "LC_ALL", "LANGUAGE")}
        done = subprocess.run([*setting.front, setting.program or self.program, *words], cwd=place, env={**environment, **setting.env}, umask=setting.umask, capture_output=True, check=False)
        # Only these answer with 1; otherwise a run that failed alike under every setting would count as the same.
        may_reach = words[0] == "reconcile" or "--fail-on" in words
        if done.returncode not in ((0, 1) if may_reach else (0,)):
            raise SystemExit(f"{setting.name}: {words}: {done.returncode} {done.stderr.decode()}")
        return done

    def make_ledger(self):
        """A ledger that every run goes on from."""
        demo = Setting("the ledger")
        self.call(demo, self.work, ["demo", "demo"])
        if self.short:
            for name in os.listdir(os.path.join(self.work, "demo", "study")):
                if not name.startswith((*SHORT, "setup")):
                    os.remove(os.path.join(self.work, "demo", "study", name))
        self.call(demo, self.work, ["screen", "demo/study", "--setup", "demo/study/setup.toml", "--figures", "none", "--out", "plain"])
        self.call(demo, self.work, ["decide", "plain", *DECISION])
        self.ledger = os.path.join(self.work, "plain", "decisions.jsonl")


def content(place):
    found = {}
    for folder, _, names in os.walk(place):
        for name in names:
            path = os.path.relpath(os.path.join(folder, name), place)
            with open(os.path.join(folder, name), "rb") as file:
                data = file.read()
            if path == os.path.join("plain", "decisions.jsonl"):
                data = b"".join(timeless(line) for line in data.splitlines())
            elif path.startswith("plain" + os.sep):
                # Tables and pages that say when it was decided.
                continue
            found[path] = hashlib.sha256(data).hexdigest()
    return found


def timeless(line):
    fields = json.loads(line)
    return json.dumps({name: value for name, value in fields.items() if name not in ("at", "sha256", "previous")}, sort_keys=True).encode()


def told(setting, expected, found):
    wrong = [path for path in sorted({*expected, *found}) if expected.get(path) != found.get(path) and not (setting.absolute and path.startswith("said: "))]
    print(f"{setting.name}: {len(found)} compared, {'the same' if not wrong else f'{len(wrong)} DIFFER: ' + ', '.join(wrong[:8])}", flush=True)
    return len(wrong)


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("native", nargs="?")
    words.add_argument("--short", action="store_true")
    words.add_argument("--only", default="")
    given = words.parse_args()
    native = os.path.abspath(given.native) if given.native else None
    faults, started = 0, time.monotonic()
    with tempfile.TemporaryDirectory() as work:
        campaign = Campaign(os.path.abspath(given.program), native, given.short, work)
        campaign.make_ledger()
        wanted = [setting for setting in settings(native, given.short) if given.only in setting.name]
        with concurrent.futures.ThreadPoolExecutor(os.cpu_count()) as pool:
            runs = list(zip(wanted, [pool.submit(campaign.run, setting) for setting in wanted]))
            expected = campaign.run(Setting("the first", {"TZ": "UTC", "LC_ALL": "C"}))
            for setting, run in runs:
                faults += told(setting, expected, run.result())
    print(f"{faults} differ ({time.monotonic() - started:.0f} s)")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
