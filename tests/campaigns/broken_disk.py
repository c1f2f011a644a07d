#!/usr/bin/env python3
"""Full disks, folders without rights, pipes, recordings that change while they are read, and two programs at once.

    python3 tests/campaigns/broken_disk.py PROGRAM [--only full|rights|pipes|changing|two] [--rounds 10] [--seed 1]

After each command: a documented exit code, one line `error:` and one line `hint:` when it did not end well, no stack trace, no wait; the audit that stood there or the new
one, whole; every acknowledged decision in the ledger; and the next run, on a healthy disk, gives the bytes of a run that nothing disturbed. Needs root (mount, setpriv).
Ends with 1 when anything was otherwise. Python's standard library only.
"""
import argparse
import contextlib
import hashlib
import json
import os
import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time

import killed

NOBODY = ["setpriv", "--reuid=65534", "--regid=65534", "--clear-groups"]
PAGE = 4096
SHARES = (0.0, 0.05, 0.2, 0.4, 0.6, 0.8, 0.9, 0.95, 1.0, 1.05, 1.3)
ROOM_LEFT_KB = (0, 4, 8, 16, 32, 64, 128, 256, 512)
LONGEST_WAIT_S = 2
COPIES = 24


class BrokenDisk(killed.Campaign):
    def __init__(self, program, work, seed, rounds):
        super().__init__(program, work, seed)
        os.chmod(work, 0o755)
        self.rounds = rounds
        self.setup = self.at("demo/study/setup.toml")
        started = time.monotonic()
        self.run("explain", "bridge")
        self.screen_s = max(self.screen_s, time.monotonic() - started)

    # One command, looked at from outside. What it says is held against what the README promises.
    def tried(self, what, words, codes, lead=(), seconds=None, **environment):
        started = time.monotonic()
        try:
            done = subprocess.run([*lead, self.program, *words], capture_output=True, text=True, cwd=self.work, check=False, env=dict(os.environ, **environment),
                                  timeout=seconds or 60 + (20 * self.screen_s))
        except subprocess.TimeoutExpired:
            self.faults.append(f"{what}: it waits without an end")
            return None
        took = time.monotonic() - started
        self.count(f"{what}: code {done.returncode}")
        if done.returncode not in codes:
            self.faults.append(f"{what}: code {done.returncode}, not one of {codes}: {done.stderr[-400:]}")
        lines = done.stderr.splitlines()
        errors, hints = sum(line.startswith("error: ") for line in lines), sum(line.startswith("hint: ") for line in lines)
        if (errors, hints) != ((1, 1) if done.returncode in (2, 3) else (0, 0)):
            self.faults.append(f"{what}: {errors} errors and {hints} hints with code {done.returncode}: {done.stderr[-400:]}")
        if "   at " in done.stderr + done.stdout or "bug in channelaudit" in done.stderr or "Unhandled" in done.stderr:
            self.faults.append(f"{what}: a fault of the program: {done.stderr[-400:]}")
        done.took = took
        return done

    @contextlib.contextmanager
    def disk(self, place, kilobytes):
        os.makedirs(place, exist_ok=True)
        subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={max(1, kilobytes)}k", "tmpfs", place], check=True)
        try:
            yield place
        finally:
            subprocess.run(["umount", "-l", place], check=True)

    @staticmethod
    def remount(place, option):
        subprocess.run(["mount", "-o", f"remount,{option}", place], check=True)

    @staticmethod
    def need_kb(folder):
        pages = sum(2 if entry.is_dir() else 1 + (entry.stat().st_size // PAGE) for place, _, _ in os.walk(folder) for entry in os.scandir(place))
        return pages * PAGE // 1024

    def full(self):
        self.full_screen()
        self.full_decide()
        self.full_bundle()
        self.full_pilot()
        self.full_temporary()

    def full_screen(self):
        need = self.need_kb(self.at("new"))
        for source in (None, "old"):
            stands = self.need_kb(self.at("old")) if source else 0
            for share in SHARES:
                what = f"full disk, screen over {'an older audit' if source else 'nothing'}"
                shutil.rmtree(self.at("t"), ignore_errors=True)
                with self.disk(self.at("t"), stands + int(share * need)) as folder:
                    if source:
                        shutil.copytree(self.at("old"), folder, dirs_exist_ok=True)
                    self.tried(what, [*self.screen_words, *self.changed, "--out", folder], (0, 2))
                    self.remount(folder, "size=100%")
                    self.judge(what, self.old if source else {})

    def full_decide(self):
        for left in ROOM_LEFT_KB:
            what, reason = "full disk, decide", f"with {left} kB"
            shutil.rmtree(self.at("t"), ignore_errors=True)
            with self.disk(self.at("t"), 1 << 16) as folder:
                shutil.copytree(self.at("old"), folder, dirs_exist_ok=True)
                room = os.statvfs(folder)
                with open(os.path.join(folder, "ballast.bin"), "wb") as ballast:
                    ballast.write(bytes(max(0, (room.f_bavail * room.f_frsize) - (left * 1024))))
                done = self.tried(what, self.decision(folder, reason), (0, 2))
                kept = done is not None and "Kept as decision" in done.stdout
                self.count(f"{what}: {'kept' if kept else 'not kept'}")
                if not kept and self.ledger(folder):
                    self.faults.append(f"{what}: not acknowledged, but in the ledger")
                with contextlib.suppress(FileNotFoundError):
                    os.remove(ballast.name)
                self.settle(what, folder, [reason] if kept else [])

    def full_bundle(self):
        shutil.rmtree(self.at("decided"), ignore_errors=True)
        shutil.copytree(self.at("old"), self.at("decided"))
        self.run(*self.decision(self.at("decided"), "for the bundle"))
        words = ["export", "bundle", self.at("decided"), "--data", self.at("study"), "--to"]
        self.run(*words, self.at("whole.zip"))
        whole = self.hash(self.at("whole.zip"))
        need = os.path.getsize(self.at("whole.zip")) // 1024
        for share in SHARES:
            what = "full disk, export bundle"
            with self.disk(self.at("disk"), int(share * need)) as folder:
                file = os.path.join(folder, "b.zip")
                done = self.tried(what, [*words, file], (0, 2))
                there = os.listdir(folder)
                if there != (["b.zip"] if done and done.returncode == 0 else []) or ("b.zip" in there and self.hash(file) != whole):
                    self.faults.append(f"{what}: code {done and done.returncode}, left behind {there}")
                self.remount(folder, "size=100%")
                if not there:
                    self.run(*words, file)
                    if self.hash(file) != whole:
                        self.faults.append(f"{what}: the next bundle has other bytes")

    def full_pilot(self):
        words = ["pilot", self.at("study/K03.edf"), "--setup", self.setup, "--out"]
        self.run(*words, self.at("piloted"))
        whole = self.content(self.at("piloted"))
        for share in SHARES:
            what = "full disk, pilot"
            with self.disk(self.at("disk"), int(share * self.need_kb(self.at("piloted")))) as folder:
                self.tried(what, [*words, folder], (0, 2))
                half = os.path.exists(os.path.join(folder, ".unfinished", "commit.json"))
                if self.content(folder) not in ({}, whole) and not half:
                    self.faults.append(f"{what}: a mixture without a list")
                self.remount(folder, "size=100%")
                self.run(*words, folder)
                if self.content(folder) != whole:
                    self.faults.append(f"{what}: the next run did not give what an undisturbed one gives")

    # Numbers of text recordings wait in the folder for temporary files.
    def full_temporary(self):
        os.makedirs(self.at("texts"), exist_ok=True)
        noise = random.Random(1)
        with open(self.at("texts/T1.csv"), "w", encoding="utf-8") as file:
            file.write("cheek (uV),brow (uV)\n" + "".join(f"{noise.gauss(0, 3):.2f},{noise.gauss(0, 3):.2f}\n" for _ in range(40000)))
        with open(self.at("texts.toml"), "w", encoding="utf-8") as file:
            file.write('[recording]\nsampling_hz = 2000.0\n[trials]\nfrom = "blocks"\n')
        words = ["screen", self.at("texts"), "--setup", self.at("texts.toml"), "--figures", "none", "--out"]
        self.run(*words, self.at("texted"))
        for kilobytes in (4, 64, 256, 512, 2048):
            shutil.rmtree(self.at("t"), ignore_errors=True)
            with self.disk(self.at("disk"), kilobytes) as folder:
                self.tried("full folder for temporary files, screen", [*words, self.at("t")], (0, 2, 3), TMPDIR=folder, DOTNET_EnableDiagnostics="0")
                if os.listdir(folder):
                    self.faults.append(f"full folder for temporary files: left behind {os.listdir(folder)}")
            self.run(*words, self.at("t"))
            if self.content(self.at("t")) != self.content(self.at("texted")):
                self.faults.append("full folder for temporary files: the next run did not give what an undisturbed one gives")

    @staticmethod
    def hash(path):
        with open(path, "rb") as file:
            return hashlib.sha256(file.read()).hexdigest()

    @staticmethod
    def decision(folder, reason, trial="2"):
        return ["decide", folder, "--recording", "K03", "--channel", "cheek", "--trial", trial, "--verdict", "reject", "--by", "R.Viewer", "--reason", reason]

    def rights(self):
        shutil.rmtree(self.at("t"), ignore_errors=True)
        with self.disk(self.at("t"), 1 << 16) as folder:
            shutil.copytree(self.at("old"), folder, dirs_exist_ok=True)
            self.remount(folder, "ro")
            self.refusals("read-only disk", folder, [])
        folder = self.fresh("old")
        subprocess.run(["chmod", "-R", "a+rX", folder, self.at("study"), self.at("demo")], check=True)
        os.chmod(self.at("other.toml"), 0o644)
        if subprocess.run([*NOBODY, self.program, "explain", "bridge"], capture_output=True, check=False).returncode:
            self.count("another user: not tried, he may not run the program")
            return
        self.refusals("folder of another user", folder, NOBODY)
        self.denied(NOBODY)

    def refusals(self, what, folder, lead):
        before = self.content(folder)
        self.tried(f"{what}, screen", [*self.screen_words, *self.changed, "--out", folder], (2,), lead)
        self.tried(f"{what}, screen as before", [*self.screen_words, "--out", folder], (0, 2), lead)
        self.tried(f"{what}, screen into a folder below", [*self.screen_words, "--out", os.path.join(folder, "new")], (2,), lead)
        self.tried(f"{what}, decide", self.decision(folder, "none"), (2,), lead)
        self.tried(f"{what}, decisions listed", ["decide", folder], (0,), lead)
        self.tried(f"{what}, pilot", ["pilot", self.at("study/K03.edf"), "--setup", self.setup, "--out", os.path.join(folder, "new")], (2,), lead)
        self.tried(f"{what}, export bundle", ["export", "bundle", folder, "--data", self.at("study"), "--to", os.path.join(folder, "b.zip")], (2,), lead)
        self.tried(f"{what}, verify", ["verify", folder, "--data", self.at("study")], (0,), lead)
        if self.content(folder) != before or any(name.startswith(".") for name in os.listdir(folder)):
            self.faults.append(f"{what}: something was written: {os.listdir(folder)}")

    # Another user meets something that he may not read.
    def denied(self, lead):
        outs = self.at("outs")
        for what, path, words, codes in (
                ("recording", self.at("study/K07.edf"), self.screen_words, (3,)),
                ("recording alone", self.at("study/K03.edf"), ["pilot", self.at("study/K03.edf")], (3,)),
                ("folder of recordings", self.at("study"), self.screen_words, (2, 3)),
                ("setup", self.setup, self.screen_words, (2,)),
                ("events beside a recording", self.at("study/K03_events.tsv"), self.screen_words, (0, 2, 3)),
                ("criteria", self.at("other.toml"), [*self.screen_words, *self.changed], (2,)),
                ("audit", self.at("t"), ["decide", self.at("t")], (2,)),
                ("audit.json", self.at("t/audit.json"), ["decide", self.at("t")], (2,)),
                ("folder of an audit's recordings", self.at("t/recordings"), ["verify", self.at("t"), "--data", self.at("study")], (1, 2)),
                ("result of a recording", self.at("t/recordings/K03/result.json"), ["export", "bundle", self.at("t"), "--data", self.at("study"), "--to", self.at("outs/b.zip")], (2,)),
                ("bundle", self.at("other.toml"), ["verify", self.at("other.toml")], (2,))):
            shutil.rmtree(outs, ignore_errors=True)
            os.makedirs(outs)
            os.chmod(outs, 0o777)
            mode = os.stat(path).st_mode
            os.chmod(path, 0)
            try:
                out = ["--out", os.path.join(outs, "audit")] if words[0] in ("screen", "pilot") else []
                self.tried(f"no right to read the {what}", [*words, *out], codes, lead)
            finally:
                os.chmod(path, mode)

    def pipes(self):
        self.run("demo", self.at("demo"))
        study, edf = self.at("piped"), self.at("study/K03.edf")
        base = time.monotonic()
        self.run("pilot", edf, "--out", self.at("quick"))
        base = time.monotonic() - base
        pipe = self.at("pipe.tsv")
        os.mkfifo(pipe)
        screen = ["screen", edf, "--figures", "none"]
        audit = lambda name: os.path.join(self.at("t"), name)
        cases = [
            ("recording", None, ["pilot", pipe], (3,)), ("recording, screen", None, ["screen", pipe], (3,)), ("setup", None, [*screen, "--setup", pipe], (2,)),
            ("criteria", None, [*screen, "--criteria", pipe], (2,)), ("events", None, [*screen, "--events", pipe], (2,)), ("readings", None, [*screen, "--impedance", pipe], (2,)),
            ("readings, impedance", None, ["impedance", pipe], (2,)), ("exclusions", None, ["reconcile", self.at("t"), pipe], (2,)), ("labels", None, ["raters", self.at("t"), pipe], (2,)),
            ("table of decisions", None, ["decide", self.at("t"), "--from", pipe, "--by", "R.Viewer"], (2,)), ("bundle", None, ["verify", pipe], (2,)),
            ("recording in a folder", os.path.join(study, "X.edf"), ["screen", study, "--figures", "none"], (3,)),
            ("text in a folder", os.path.join(study, "notes.csv"), ["screen", study, "--figures", "none"], (0,)),
            ("events beside a recording", os.path.join(study, "K03_events.tsv"), ["screen", study, "--figures", "none"], (0, 2, 3)),
            ("channels beside a recording", os.path.join(study, "K03_channels.tsv"), ["screen", study, "--figures", "none"], (0,)),
            ("sidecar", os.path.join(study, "K03_emg.json"), ["screen", study, "--figures", "none"], (0,)),
            ("participants", os.path.join(study, "participants.tsv"), ["screen", study, "--figures", "none"], (0,)),
            ("audit.json", audit("audit.json"), ["decide", self.at("t")], (2,)), ("audit.json, screen", audit("audit.json"), [*self.screen_words], (0, 2)),
            ("ledger", audit("decisions.jsonl"), self.decision(self.at("t"), "none"), (2,)), ("ledger, screen", audit("decisions.jsonl"), [*self.screen_words], (0, 2)),
            ("lock of the ledger", audit("decisions.lock"), self.decision(self.at("t"), "none"), (0, 2)),
            ("table of an audit, compare", audit("verdicts.tsv"), ["compare", self.at("t"), self.at("old")], (0, 1, 2)),
            ("table of an audit, verify", audit("verdicts.tsv"), ["verify", self.at("t"), "--data", self.at("study")], (1, 2)),
            ("result of an audit", audit("recordings/K03/result.json"), ["reconcile", self.at("t"), self.at("demo/exclusions.tsv")], (1, 2)),
            ("page of an audit, screen", audit("report.html"), [*self.screen_words], (0,)),
            ("list of a run that was ended", audit(".unfinished/commit.json"), ["decide", self.at("t")], (2,)),
        ]
        for what, place, words, codes in cases:
            self.fresh("old")
            shutil.rmtree(study, ignore_errors=True)
            os.makedirs(study)
            shutil.copy(edf, study)
            if place:
                os.makedirs(os.path.dirname(place), exist_ok=True)
                with contextlib.suppress(FileNotFoundError):
                    os.remove(place)
                os.mkfifo(place)
            shutil.rmtree(self.at("out"), ignore_errors=True)
            out = ["--out", self.at("t") if "audit" in what or "ledger" in what else self.at("out")] if words[0] in ("screen", "pilot") else []
            done = self.tried(f"a pipe as {what}", [*words, *out], codes, seconds=60 + (20 * self.screen_s))
            if done and done.returncode in (2, 3) and done.took > LONGEST_WAIT_S + (5 * max(base, self.screen_s)):
                self.faults.append(f"a pipe as {what}: {done.took:.1f} s until it was refused")

    # A recording long enough to be caught while it is read.
    def long_recording(self, path):
        with open(self.at("study/K03.edf"), "rb") as file:
            whole = file.read()
        header = int(whole[184:192])
        records = int(whole[236:244])
        with open(path, "wb") as file:
            file.write(whole[:236] + str(records * COPIES).ljust(8).encode() + whole[244:header])
            for _ in range(COPIES):
                file.write(whole[header:])

    def changing(self):
        os.makedirs(self.at("long"), exist_ok=True)
        source, path = self.at("source.edf"), self.at("long/L1.edf")
        self.long_recording(source)
        words = ["screen", self.at("long"), "--figures", "none", "--out"]
        shutil.copy(source, path)
        started = time.monotonic()
        self.run(*words, self.at("l-whole"))
        took = time.monotonic() - started
        whole = self.content(self.at("l-whole"))
        for change in ("shrinks", "grows", "changes", "is replaced", "is removed"):
            for _ in range(self.rounds):
                what = f"a recording that {change} while it is read"
                shutil.copy(source, path)
                shutil.rmtree(self.at("t"), ignore_errors=True)
                process = subprocess.Popen([self.program, *words, self.at("t")], cwd=self.work, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
                time.sleep(self.random.uniform(0.05, 1.0) * took)
                self.change(path, change)
                said = process.communicate()[1]
                self.count(f"{what}: code {process.returncode}")
                if process.returncode not in (0, 2, 3) or "   at " in said or "bug in" in said or (process.returncode and said.count("error: ") != 1):
                    self.faults.append(f"{what}: code {process.returncode}: {said[-300:]}")
                if process.returncode == 0 and self.content(self.at("t")) != whole and not self.is_of_now(path):
                    self.faults.append(f"{what}: an audit of neither the old nor the new file")
                shutil.copy(source, path)
                self.run(*words, self.at("t"))
                if self.content(self.at("t")) != whole:
                    self.faults.append(f"{what}: the next run did not give what an undisturbed one gives")

    def change(self, path, change):
        if change == "is removed":
            os.remove(path)
        elif change == "is replaced":
            shutil.copy(self.at("study/K07.edf"), path + ".new")
            os.replace(path + ".new", path)
        else:
            with open(path, "r+b") as file:
                size = file.seek(0, os.SEEK_END)
                if change == "shrinks":
                    file.truncate(self.random.randrange(0, size))
                elif change == "grows":
                    file.write(bytes(self.random.randrange(1, size // 4)))
                else:
                    file.seek(self.random.randrange(4096, size - 65536))
                    file.write(bytes(65536))

    # The audit says of which bytes it is; those that stand there now must give the same.
    def is_of_now(self, path):
        with open(self.at("t/audit.json"), encoding="utf-8") as file:
            stated = json.load(file)["recordings"][0]["sha256"]
        return os.path.exists(path) and stated == self.hash(path)

    def two(self):
        self.two_screens()
        for _ in range(self.rounds):
            self.many_decide("decide by four at once", [])
            self.many_decide("decide while screen writes", [[*self.screen_words, *self.changed, "--out", self.at("t")]])

    def two_screens(self):
        for turn in range(self.rounds):
            source = "old" if turn % 2 else None
            folder = self.fresh(source)
            what = "two screen at once"
            both = [self.begin([*self.screen_words, *self.changed, "--out", folder]) for _ in range(2)]
            codes = []
            for process in both:
                said = process.communicate()[1]
                codes.append(process.returncode)
                if process.returncode not in (0, 2) or "   at " in said or said.count("error: ") != (process.returncode == 2):
                    self.faults.append(f"{what}: code {process.returncode}: {said[-300:]}")
            self.count(f"{what}: codes {sorted(codes)}")
            if 0 not in codes or self.content(folder) != self.new:
                self.faults.append(f"{what}: codes {codes}, and the folder does not hold the new audit")
            self.judge(what, self.old if source else {})

    def many_decide(self, what, others):
        folder = self.fresh("old")
        running = [self.begin(words) for words in others]
        deciding = [(f"number {number}", self.begin(self.decision(folder, f"number {number}", str(2 + number)))) for number in range(4)]
        acknowledged = []
        for reason, process in deciding:
            out, said = process.communicate()
            self.count(f"{what}: code {process.returncode}")
            if "Kept as decision" in out:
                acknowledged.append(reason)
            if process.returncode not in (0, 2) or "   at " in said:
                self.faults.append(f"{what}: code {process.returncode}: {said[-300:]}")
        for process in running:
            said = process.communicate()[1]
            self.count(f"{what}: screen ended with {process.returncode}")
            if process.returncode not in (0, 2) or "   at " in said:
                self.faults.append(f"{what}: screen ended with {process.returncode}: {said[-300:]}")
        if others:
            self.run(*self.screen_words, "--out", folder)
        self.settle(what, folder, acknowledged)

    def begin(self, words):
        return subprocess.Popen([self.program, *words], cwd=self.work, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)


def main():
    kinds = ["full", "rights", "pipes", "changing", "two"]
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("--only", choices=kinds)
    words.add_argument("--rounds", type=int, default=10)
    words.add_argument("--seed", type=int, default=1)
    given = words.parse_args()
    # Ended from outside, it takes its disks away all the same.
    signal.signal(signal.SIGTERM, lambda *_: sys.exit(143))
    with tempfile.TemporaryDirectory() as work:
        campaign = BrokenDisk(given.program, work, given.seed, given.rounds)
        for name in [given.only] if given.only else kinds:
            started = time.monotonic()
            getattr(campaign, name)()
            print(f"{name}: {time.monotonic() - started:.0f} s", flush=True)
        for what, number in sorted(campaign.counts.items()):
            print(f"{what}: {number}")
        for fault in campaign.faults:
            print(fault, file=sys.stderr)
        print(f"{len(campaign.faults)} faults")
        return 1 if campaign.faults else 0


if __name__ == "__main__":
    sys.exit(main())
