#!/usr/bin/env python3
"""Kills screen, decide and review (SIGKILL) at many moments and looks at what is left.

    python3 tests/campaigns/killed.py PROGRAM [--times 300] [--seed 1] [--only screen|renames|decide|review]

After each kill the folder must be the old audit or the new one, or hold the list by which the next run completes it; the next run must give the bytes of a run that
nobody killed; every decision that was acknowledged must be in the ledger. `renames` needs strace: it kills at each system call that moves or removes a file, one by one.
Ends with 1 when anything was lost or mixed. Python's standard library only.
"""
import argparse
import hashlib
import http.cookiejar
import json
import os
import random
import re
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request

OTHER_LIMITS = "[drift]\nquestionable = []\n"
IGNORED = (".unfinished/", ".channelaudit-partial", "decisions.lock")


class Campaign:
    def __init__(self, program, work, seed):
        self.program, self.work = os.path.abspath(program), work
        self.random = random.Random(seed)
        self.faults, self.counts = [], {}
        demo = self.at("demo")
        self.run("demo", demo, "--no-audit") if "--no-audit" in self.text("demo", "--help") else self.run("demo", demo)
        study = os.path.join(demo, "study")
        os.makedirs(self.at("study"))
        for name in sorted(os.listdir(study)):
            if name.startswith(("K03", "K07")):
                shutil.copy(os.path.join(study, name), self.at("study"))
        with open(self.at("other.toml"), "w", encoding="utf-8") as file:
            file.write(OTHER_LIMITS)
        self.screen_words = ["screen", self.at("study"), "--setup", os.path.join(study, "setup.toml"), "--figures", "none", "--parquet"]
        self.changed = ["--criteria", self.at("other.toml")]
        self.run(*self.screen_words, "--out", self.at("old"))
        started = time.monotonic()
        self.run(*self.screen_words, *self.changed, "--out", self.at("new"))
        self.screen_s = time.monotonic() - started
        self.old, self.new = self.content(self.at("old")), self.content(self.at("new"))
        assert self.old != self.new

    def at(self, name):
        return os.path.join(self.work, name)

    def text(self, *words):
        return subprocess.run([self.program, *words], capture_output=True, text=True, cwd=self.work, check=False).stdout

    def run(self, *words, code=0):
        done = subprocess.run([self.program, *words], capture_output=True, text=True, cwd=self.work, check=False)
        if done.returncode != code:
            raise SystemExit(f"{words}: code {done.returncode}\n{done.stderr}")
        return done

    def content(self, folder):
        found = {}
        for place, _, names in os.walk(folder):
            for name in names:
                path = os.path.relpath(os.path.join(place, name), folder)
                if not any(part in path for part in IGNORED):
                    with open(os.path.join(place, name), "rb") as file:
                        found[path] = hashlib.sha256(file.read()).hexdigest()
        return found

    def count(self, what):
        self.counts[what] = self.counts.get(what, 0) + 1

    def fresh(self, source):
        folder = self.at("t")
        shutil.rmtree(folder, ignore_errors=True)
        if source:
            shutil.copytree(self.at(source), folder)
        return folder

    # The folder after a kill, and after the run that follows it.
    def judge(self, what, before):
        folder = self.at("t")
        found = self.content(folder) if os.path.isdir(folder) else {}
        half = os.path.exists(os.path.join(folder, ".unfinished", "commit.json"))
        kind = "old" if found == before else "new" if found == self.new else "listed" if half else "MIXED"
        self.count(f"{what}: {kind}")
        if kind == "MIXED":
            self.faults.append(f"{what}: a mixture without a list")
        again = subprocess.run([self.program, *self.screen_words, *self.changed, "--out", folder], capture_output=True, text=True, cwd=self.work, check=False)
        if again.returncode != 0 or self.content(folder) != self.new:
            self.faults.append(f"{what}: the next run did not give what an undisturbed one gives (code {again.returncode}): {again.stderr[:300]}")
        if half and "completed now" not in again.stderr:
            self.faults.append(f"{what}: completed without a word: {again.stderr[:300]}")
        left = [name for name in os.listdir(folder) if name.startswith(".")]
        if left:
            self.faults.append(f"{what}: left behind {left}")

    def screen(self, times):
        for turn in range(times):
            source = "old" if turn % 2 else None
            folder = self.fresh(source)
            process = subprocess.Popen(
                [self.program, *self.screen_words, *self.changed, "--out", folder], cwd=self.work, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            # Half of the kills in the last fifth, where files get their names.
            share = self.random.uniform(0, 1.05) if turn % 4 < 2 else self.random.uniform(0.8, 1.05)
            time.sleep(share * self.screen_s)
            process.send_signal(signal.SIGKILL)
            process.wait()
            self.judge("screen", self.old if source else {})

    def renames(self, _):
        for source in ("old", None):
            for call in ("rename", "unlink"):
                number = 0
                while True:
                    number += 1
                    folder = self.fresh(source)
                    done = subprocess.run(
                        ["strace", "-f", "-qq", "-o", os.devnull, "-e", f"trace={call}", "-e", f"inject={call}:signal=SIGKILL:when={number}",
                         self.program, *self.screen_words, *self.changed, "--out", folder, "--jobs", "1"], cwd=self.work, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)
                    if done.returncode == 0:
                        break
                    self.judge(f"at {call}", self.old if source else {})

    def ledger(self, folder):
        place = os.path.join(folder, "decisions.jsonl")
        if not os.path.exists(place):
            return []
        with open(place, "rb") as file:
            return [json.loads(line) for line in file.read().split(b"\n")[:-1]]

    def decide(self, times):
        folder, acknowledged = self.fresh("old"), []
        words = ["decide", folder, "--recording", "K03", "--channel", "cheek", "--trial", "2", "--verdict", "questionable", "--by", "R.Viewer", "--reason"]
        started = time.monotonic()
        self.run(*words, "the first")
        took = time.monotonic() - started
        acknowledged.append("the first")
        for turn in range(times):
            process = subprocess.Popen([self.program, *words, f"turn {turn}"], cwd=self.work, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
            timer = time.monotonic() + self.random.uniform(0.2, 1.05) * took
            while time.monotonic() < timer and process.poll() is None:
                time.sleep(0.002)
            process.send_signal(signal.SIGKILL)
            said = process.communicate()[0]
            if "Kept as decision" in said:
                acknowledged.append(f"turn {turn}")
            self.count("decide: acknowledged" if "Kept as decision" in said else "decide: not yet")
        self.settle("decide", folder, acknowledged)

    def settle(self, what, folder, acknowledged):
        self.run("decide", folder)
        self.run("decide", folder, "--recording", "K03", "--channel", "cheek", "--trial", "3", "--verdict", "pass", "--by", "R.Viewer", "--reason", "the last")
        reasons = [line["reason"] for line in self.ledger(folder)]
        lost = [reason for reason in [*acknowledged, "the last"] if reasons.count(reason) != 1]
        if lost:
            self.faults.append(f"{what}: {len(lost)} acknowledged decisions are not there once: {lost[:5]}")
        fresh = self.at("fresh")
        shutil.rmtree(fresh, ignore_errors=True)
        os.makedirs(fresh)
        shutil.copy(os.path.join(folder, "decisions.jsonl"), fresh)
        self.run(*self.screen_words, "--out", fresh)
        mine = {path: value for path, value in self.content(folder).items() if path != "decisions.torn"}
        if mine != self.content(fresh):
            self.faults.append(f"{what}: tables and pages differ from those of a fresh run with the same ledger")

    def review(self, times):
        program = os.path.join(os.path.dirname(self.program), "channelaudit-review")
        folder, acknowledged, turn = self.fresh("old"), [], 0
        while turn < times:
            server = subprocess.Popen(
                [program, folder, "--data", self.at("study"), "--by", "S.Econd", "--cells", "all"], cwd=self.work, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
            address = ""
            for line in server.stdout:
                found = re.search(r"http:\S+token=\w+", line)
                if found:
                    address = found.group(0)
                    break
            opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(http.cookiejar.CookieJar()))
            origin = address.split("/?")[0]
            opener.open(address).read()
            end = time.monotonic() + self.random.uniform(0.05, 1.0)
            killed = False
            while not killed and turn < times:
                body = json.dumps({"n": 1 + turn % 50, "reach": "trial", "others": 0, "verdict": "questionable", "reason": f"look {turn}", "seen": 1 << 20}).encode()
                request = urllib.request.Request(f"{origin}/decide", body, {"Content-Type": "application/json", "Origin": origin})
                if time.monotonic() > end:
                    # In the midst of an answer.
                    os.kill(server.pid, signal.SIGKILL) if self.random.random() < 0.3 else subprocess.Popen(["sh", "-c", f"sleep {self.random.uniform(0, 0.01)}; kill -9 {server.pid}"])
                    killed = True
                try:
                    with opener.open(request, timeout=10) as answer:
                        if answer.status == 200:
                            acknowledged.append(f"look {turn}")
                            self.count("review: acknowledged")
                except urllib.error.HTTPError as refused:
                    if refused.code == 429:
                        # Asked too fast: the same again.
                        self.count("review: told to slow down")
                        time.sleep(0.05)
                        continue
                    # A server that does not take it proves nothing.
                    self.faults.append(f"review: refused with {refused.code}: {refused.read()[:200]}")
                except OSError:
                    self.count("review: not yet")
                turn += 1
            server.kill()
            server.wait()
            self.count("review: servers killed")
        self.settle("review", folder, acknowledged)


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("--times", type=int, default=300)
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--only", choices=["screen", "renames", "decide", "review"])
    given = words.parse_args()
    with tempfile.TemporaryDirectory() as work:
        campaign = Campaign(given.program, work, given.seed)
        for name in [given.only] if given.only else ["screen", "renames", "decide", "review"]:
            started = time.monotonic()
            getattr(campaign, name)(given.times)
            print(f"{name}: {time.monotonic() - started:.0f} s", flush=True)
        for what, number in sorted(campaign.counts.items()):
            print(f"{what}: {number}")
        for fault in campaign.faults:
            print(fault, file=sys.stderr)
        print(f"{len(campaign.faults)} faults")
        return 1 if campaign.faults else 0


if __name__ == "__main__":
    sys.exit(main())
