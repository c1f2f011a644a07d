#!/usr/bin/env python3
"""Runs what is left running for hours, and looks at its memory, its open handles and its time.

    python3 tests/campaigns/long.py PROGRAM [--minutes 60] [--requests 10000] [--only follow|review] [--seed 1] [--trace FOLDER]

follow: `pilot --follow` on a recording that is written at 20 times the speed of a session: an hour makes one of 20 hours with 12,000 trials, far beyond any pilot. Handles and
threads do not grow by more than 8 from the first half to the second; memory stays within 1.25 times that of one `pilot` on the finished file and 64 MiB; a look costs at most 1.5
times as much a recorded hour at the end as early on, and all of it at most 15 % of one core; in the end every file is, byte for byte, that of `pilot` on the finished file.
review: the server of `review` under requests of all kinds, among them decisions and what must be refused. From the second fifth to the last, handles and threads do not grow by
more than 8 and memory by 64 MiB; each kind of request takes at most 1.5 times as long at the end as at the start, or 10 ms more (a decision grows with the ledger it belongs to:
at most 200 ms; tables at most 3 s); tables and pages, pictures aside, are those of a fresh run with the same ledger.
Ends with 1 when a limit was passed. --trace keeps every sample and what was said. Linux (/proc), Python's standard library only.
"""
import argparse
import hashlib
import http.client
import json
import os
import random
import re
import shutil
import socket
import statistics
import subprocess
import sys
import tempfile
import time

SPEED = 20
TICK_S = 0.25
CLOCK = os.sysconf("SC_CLK_TCK")
PAGE = os.sysconf("SC_PAGE_SIZE")
MIB = 1 << 20

# What is called flat.
MOST_HANDLES_MORE = 8
MOST_THREADS_MORE = 8
MOST_MEMORY_TIMES = 1.25
MOST_MEMORY_MORE = 64 * MIB
MOST_REVIEW_MORE = 64 * MIB
MOST_LOOK_TIMES = 1.5
MOST_CPU_SHARE = 0.15
MOST_SLOWER_TIMES = 1.5
MOST_SLOWER_MS = 10
MOST_DECISION_MS = 200


class Sample:
    """A process at a moment: seconds since the start, resident bytes, open handles, threads, seconds of processor time."""

    def __init__(self, pid, started):
        with open(f"/proc/{pid}/stat", encoding="ascii") as file:
            fields = file.read().rsplit(")", 1)[1].split()
        self.at_s = time.monotonic() - started
        self.cpu_s = (int(fields[11]) + int(fields[12])) / CLOCK
        self.threads = int(fields[17])
        self.resident = int(fields[21]) * PAGE
        self.handles = len(os.listdir(f"/proc/{pid}/fd"))

    def __str__(self):
        return f"{self.at_s:.1f}\t{self.resident / MIB:.0f}\t{self.handles}\t{self.threads}\t{self.cpu_s:.2f}"


class Trace:
    """Samples, one a line in a file when one is asked for."""

    def __init__(self, folder, name, head):
        self.file = open(os.path.join(folder, name), "w", encoding="utf-8") if folder else None
        self.write(head)

    def write(self, *cells):
        if self.file:
            print(*cells, sep="\t", file=self.file, flush=True)


def content(folder, leave_out=()):
    found = {}
    for place, _, names in os.walk(folder):
        for name in names:
            path = os.path.relpath(os.path.join(place, name), folder)
            if name not in leave_out:
                with open(os.path.join(place, name), "rb") as file:
                    found[path] = hashlib.sha256(file.read()).hexdigest()
    return found


def differing(one, other):
    return sorted(path for path in {*one, *other} if one.get(path) != other.get(path))


class Session:
    """The quiet session of the demo over and over as one EDF+ recording: its samples, and its annotations, each time later."""

    def __init__(self, path):
        with open(path, "rb") as file:
            fixed = file.read(256)
            signals = int(fixed[252:256])
            self.head = fixed + file.read(256 * signals)
            data = file.read()
        counts = [int(self.head[256 + 216 * signals + 8 * i:][:8]) for i in range(signals)]
        self.record_bytes, self.marks_bytes = 2 * sum(counts), 2 * counts[-1]
        self.records = [data[i:i + self.record_bytes] for i in range(0, len(data), self.record_bytes)]
        if fixed[244:252].strip() != b"1" or len(data) % self.record_bytes:
            raise SystemExit("the demo's records are not of one second any more")

    def marks(self, record):
        return [mark for mark in record[-self.marks_bytes:].split(b"\0") if mark]

    def header(self, records):
        return self.head[:236] + str(records).ljust(8).encode() + self.head[244:]

    def record(self, number):
        turn, place = divmod(number, len(self.records))
        record = self.records[place]
        marks = [b"+%d\x14\x14" % number]
        for mark in self.marks(record)[1:]:
            onset, rest = re.fullmatch(rb"([+-][\d.]+)(.*)", mark, re.DOTALL).groups()
            marks.append(b"+%.3f" % (float(onset) + turn * len(self.records)) + rest)
        text = b"\0".join(marks) + b"\0"
        if len(text) > self.marks_bytes:
            raise SystemExit("an annotation does not fit its record")
        return record[:-self.marks_bytes] + text.ljust(self.marks_bytes, b"\0")


class Writer:
    """An amplifier: appends what is due, ending anywhere in a record, and says the number of records when it stops."""

    def __init__(self, path, session, seconds):
        self.session, self.seconds, self.written, self.pending = session, seconds, 0, b""
        self.file = open(path, "w+b", buffering=0)
        self.file.write(session.header(-1))

    def go_on(self, at_s):
        if self.file.closed:
            return
        is_over = at_s >= self.seconds
        while self.written < int(min(at_s, self.seconds) * SPEED):
            self.pending += self.session.record(self.written)
            self.written += 1
        now = len(self.pending) if is_over else len(self.pending) * 6 // 7
        self.file.write(self.pending[:now])
        self.pending = self.pending[now:]
        if is_over:
            self.file.seek(0)
            self.file.write(self.session.header(self.written))
            self.file.close()


class Follow:
    def __init__(self, program, work, minutes, trace):
        self.program, self.work, self.minutes, self.trace = program, work, minutes, trace
        self.faults = []
        subprocess.run([program, "demo", self.at("demo")], check=True, capture_output=True)
        self.session = Session(self.at("demo", "study", "K03.edf"))
        self.words = [program, "pilot", "live.edf", "--setup", self.at("demo", "study", "setup.toml")]

    def at(self, *parts):
        return os.path.join(self.work, *parts)

    # One look ends when the list of what was written is there anew.
    def look(self):
        try:
            return os.stat(self.at("followed", "audit.json")).st_mtime_ns
        except FileNotFoundError:
            return None

    def run(self):
        rows = Trace(self.trace, "follow.tsv", "at_s\tMiB\thandles\tthreads\tcpu_s\trecorded_s")
        with open(self.at("said.txt"), "wb") as said:
            process = subprocess.Popen([*self.words, "--out", "followed", "--follow"], cwd=self.work, stdout=said, stderr=subprocess.STDOUT)
        started = time.monotonic()
        live = Writer(self.at("live.edf"), self.session, self.minutes * 60)
        samples, looks, seen, spent, begun_at = [], [], None, 0.0, 0
        while process.poll() is None:
            live.go_on(time.monotonic() - started)
            try:
                sample = Sample(process.pid, started)
            except (FileNotFoundError, ProcessLookupError):
                break
            samples.append(sample)
            rows.write(sample, live.written)
            now = self.look()
            if now != seen:
                # What was recorded when the look began is not known to the second; the last samples before it tell nearly.
                looks.append((sample.at_s, begun_at, sample.cpu_s - spent))
                seen = now
            if len(samples) > 1 and sample.cpu_s - samples[-2].cpu_s < 0.02:
                spent, begun_at = sample.cpu_s, live.written
            time.sleep(TICK_S)
        process.wait()
        self.judge(process.returncode, samples, looks)

    def judge(self, code, samples, looks):
        self.check(code == 0, f"it ended with {code}")
        once, memory, cpu_s, took_s = self.once()
        recorded_h = self.minutes * 60 * SPEED / 3600
        early, late = samples[: len(samples) // 2], samples[len(samples) // 2:]
        most = max(sample.resident for sample in samples)
        handles = [max(sample.handles for sample in half) for half in (early, late)]
        threads = [max(sample.threads for sample in half) for half in (early, late)]
        share = samples[-1].cpu_s / samples[-1].at_s
        print(f"follow: {self.minutes} min at {SPEED} x, {recorded_h:.1f} h recorded, {os.path.getsize(self.at('live.edf')) / MIB:.0f} MiB, {len(looks)} looks")
        for part in range(5):
            some = samples[len(samples) * part // 5: len(samples) * (part + 1) // 5]
            print(f"  fifth {part + 1}: at most {max(s.resident for s in some) / MIB:.0f} MiB, {max(s.handles for s in some)} handles, {max(s.threads for s in some)} threads")
        print(f"  at most {most / MIB:.0f} MiB; one pilot on the finished file {memory / MIB:.0f} MiB, {cpu_s:.1f} s of processor time, {took_s:.1f} s")
        print(f"  {share:.1%} of one core all in all")
        costs = [(recorded / 3600, cost) for _, recorded, cost in looks if recorded > 600]
        rates = [cost / hours for hours, cost in costs]
        third = max(1, len(rates) // 3)
        if rates:
            first, last = statistics.median(rates[:third]), statistics.median(rates[-third:])
            print(f"  processor time of a look, a recorded hour: {first:.2f} s early, {last:.2f} s late")
            self.check(last <= first * MOST_LOOK_TIMES, "a look costs more a recorded hour than at the start")
        self.check(handles[1] <= handles[0] + MOST_HANDLES_MORE, f"handles: {handles}")
        self.check(threads[1] <= threads[0] + MOST_THREADS_MORE, f"threads: {threads}")
        self.check(most <= memory * MOST_MEMORY_TIMES + MOST_MEMORY_MORE, "more memory than one pilot takes")
        self.check(share <= MOST_CPU_SHARE, "more of a core than it may take")
        wrong = differing(content(self.at("followed")), once)
        self.check(not wrong, f"files differ from those of pilot on the finished file: {wrong}")
        print(f"  {len(once)} files the same as those of pilot on the finished file" if not wrong else "  files differ")

    # The same question asked once, of the finished file.
    def once(self):
        started = time.monotonic()
        process = subprocess.Popen([*self.words, "--out", "once"], cwd=self.work, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        _, status, used = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
        self.check(process.returncode == 0, f"pilot on the finished file ended with {process.returncode}")
        return content(self.at("once")), used.ru_maxrss << 10, used.ru_utime + used.ru_stime, time.monotonic() - started

    def check(self, is_so, what):
        if not is_so:
            self.faults.append(f"follow: {what}")


class Review:
    """One browser and many strangers at the server of a review."""

    REASONS = ["moved", "mains came back", "<img src=x onerror=alert(1)>", "=1+1", "\u202egnihton", "looked at twice " * 12]

    def __init__(self, program, work, requests, seed, trace):
        self.work, self.requests, self.trace = work, requests, trace
        self.program, self.server = program, os.path.join(os.path.dirname(program), "channelaudit-review")
        self.random = random.Random(seed)
        self.faults, self.times, self.counts = [], {}, {}
        subprocess.run([program, "demo", self.at("demo")], check=True, capture_output=True)
        self.study, self.audit = self.at("demo", "study"), self.at("demo", "audit")
        self.connection, self.cookie, self.port, self.cells, self.seen, self.undo = None, "", 0, 1, 0, None

    def at(self, *parts):
        return os.path.join(self.work, *parts)

    def check(self, is_so, what):
        if not is_so:
            self.faults.append(f"review: {what}")

    def ask(self, method, path, body=None, **heads):
        """A request as the page sends it, but for what heads say; gives status and body. Asking too fast, it asks again."""
        while True:
            if self.connection is None:
                self.connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
            sent = {"Cookie": self.cookie, "Origin": f"http://127.0.0.1:{self.port}", "Content-Type": "application/json"}
            sent.update({name.replace("_", "-"): value for name, value in heads.items()})
            try:
                self.connection.request(method, path, body, {name: value for name, value in sent.items() if value is not None})
                answer = self.connection.getresponse()
                data, status = answer.read(), answer.status
                if answer.will_close:
                    self.connection.close()
                    self.connection = None
            except (http.client.HTTPException, OSError):
                self.connection.close()
                self.connection = None
                return 0, b""
            if status != 429:
                return status, data
            self.counts["asked too fast"] = self.counts.get("asked too fast", 0) + 1
            time.sleep(0.05)

    def read(self, path):
        status, data = self.ask("GET", path)
        self.check(status == 200, f"{path}: {status} {data[:200]!r}")
        return data

    def cell(self):
        return json.loads(self.read(f"/cell?n={self.random.randint(1, self.cells)}"))

    def state(self):
        self.take(json.loads(self.read("/state")))

    def take(self, state):
        self.seen, self.undo = state["seen"], state["undo"]

    def look(self):
        self.cell()

    def picture(self):
        number, start = self.random.randint(1, self.cells), self.random.uniform(0, 170)
        look = self.random.choice(["light", "dark"])
        data = self.read(f"/picture?n={number}&from={start:.2f}&to={start + 4:.2f}&w=860&h=440&x=1&look={look}&behind={self.random.randint(0, 1)}")
        self.check(data.startswith(b"\x89PNG"), "a picture that is none")

    def ribbon(self):
        self.read(f"/ribbon?n={self.random.randint(1, self.cells)}")

    def sheet(self):
        status, _ = self.ask("GET", f"/sheet?n={self.random.randint(1, self.cells)}")
        self.check(status in (200, 404), f"sheet: {status}")

    def page(self):
        self.read(self.random.choice(["/", "/review.js", "/review.css", "/words.js"]))

    def post(self, path, fields):
        status, data = self.ask("POST", path, json.dumps(fields))
        return status, json.loads(data) if data else {}

    def decide(self):
        fields = {"n": self.random.randint(1, self.cells), "reach": self.random.choice(["trial"] * 9 + ["channel"]), "others": 0, "reason": self.random.choice(self.REASONS),
                  "verdict": self.random.choice(["pass", "questionable", "reject"]), "seen": self.seen}
        status, body = self.post("/decide", fields)
        self.check(status == 200, f"decide: {status} {body}")
        if status == 200:
            self.take(body["state"])

    def withdraw(self):
        if self.undo is None:
            self.state()
            return
        status, body = self.post("/withdraw", {"number": self.undo["number"]})
        self.check(status == 200, f"withdraw: {status} {body}")
        if status == 200:
            self.take(body["state"])

    def tables(self):
        status, body = self.post("/tables", {})
        self.check(status == 200, f"tables: {status} {body}")

    def stale(self):
        """Decides by what was seen long ago: refused when somebody decided meanwhile."""
        status, body = self.post("/decide", {"n": 1, "reach": "trial", "others": 0, "reason": "late", "verdict": "pass", "seen": 0})
        self.check(status in (200, 409), f"stale: {status}")
        if status == 200:
            self.take(body["state"])

    def bad(self):
        """What must be refused, and must not cost anything that stays."""
        good = json.dumps({"n": 1, "reach": "trial", "others": 0, "reason": "x", "verdict": "pass", "seen": 0})
        kind = self.random.choice([
            ("GET", "/state", None, {"Cookie": None}), ("GET", "/cell?n=1", None, {"Cookie": "channelaudit-review=" + "f" * 64}), ("GET", "/?token=" + "0" * 64, None, {"Cookie": None}),
            ("GET", "/state", None, {"Host": "attacker.example"}), ("POST", "/decide", good, {"Origin": "http://attacker.example"}), ("POST", "/decide", good, {"Origin": None}),
            ("POST", "/decide", good, {"Content_Type": "text/plain"}), ("POST", "/decide", "{", {}), ("POST", "/decide", "[" * 4000, {}), ("POST", "/decide", good[:-1] + ',"n":2}', {}),
            ("POST", "/decide", good.replace('"x"', '"' + "x" * 20000 + '"'), {}), ("POST", "/decide", good.replace('"n": 1', '"n": 99999999'), {}),
            ("POST", "/decide", good.replace('"x"', '"\\ud800"'), {}), ("POST", "/decide", b"\xff\xfe{}", {}), ("POST", "/withdraw", '{"number": -1}', {}), ("PUT", "/decide", good, {}),
            ("GET", "/cell?n=0", None, {}), ("GET", "/cell?n=99999999999999", None, {}), ("GET", "/picture?n=1&from=NaN&to=1e999", None, {}), ("GET", "/../../etc/passwd", None, {}),
            ("GET", "/picture?n=1&from=5&to=1", None, {}), ("GET", "/sheet?n=../../audit.json", None, {}), ("GET", "/%2e%2e/audit.json", None, {}), ("GET", "/" + "a" * 6000, None, {}),
            ("GET", "/state", None, {"Sec_Fetch_Site": "cross-site"}), ("GET", "/state", None, {"X_Long": "y" * 20000}),
        ])
        status, _ = self.ask(kind[0], kind[1], kind[2], **kind[3])
        self.check(status == 0 or 400 <= status < 500 or (status == 200 and kind[1].startswith("/picture")), f"{kind[0]} {kind[1][:60]} {str(kind[2])[:40]} {str(kind[3])[:60]}: {status}")

    def broken(self):
        """A connection that says half a request, or nonsense, or nothing, and goes."""
        with socket.create_connection(("127.0.0.1", self.port), timeout=10) as stranger:
            stranger.sendall(self.random.choice([b"", b"GET /state HT", b"\0\xff" * 50, b"POST /decide HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Length: 9999\r\n\r\n{", b"GET / HTTP/9.9\r\n\r\n"]))

    KINDS = {"state": 14, "look": 22, "picture": 14, "ribbon": 8, "sheet": 2, "page": 4, "decide": 16, "withdraw": 4, "stale": 2, "bad": 12, "broken": 2}

    def run(self):
        rows = Trace(self.trace, "review.tsv", "requests\tat_s\tMiB\thandles\tthreads\tcpu_s")
        process = subprocess.Popen([self.server, self.audit, "--data", self.study, "--by", "R.Viewer", "--cells", "all"], cwd=self.work, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
        said = ""
        while "token=" not in said:
            said = process.stdout.readline()
            if not said:
                raise SystemExit("the server did not start")
        self.port, token = re.search(r"127\.0\.0\.1:(\d+)/\?token=(\w+)", said).groups()
        opened = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        opened.request("GET", f"/?token={token}")
        self.cookie = opened.getresponse().getheader("Set-Cookie").split(";")[0]
        opened.close()
        self.cells = json.loads(self.read("/state"))["count"]
        started, samples = time.monotonic(), []
        names, weights = list(self.KINDS), list(self.KINDS.values())
        for number in range(self.requests):
            name = "tables" if number % 500 == 499 else self.random.choices(names, weights)[0]
            begun = time.monotonic()
            getattr(self, name)()
            self.times.setdefault(name, []).append((number, (time.monotonic() - begun) * 1000))
            if number % 25 == 0:
                samples.append(Sample(process.pid, started))
                rows.write(number, samples[-1])
            if len(self.faults) > 20 or process.poll() is not None:
                self.check(process.poll() is None, f"the server ended after {number} requests")
                break
        took_s = time.monotonic() - started
        process.terminate()
        process.communicate()
        self.check(process.returncode == 0, f"the server ended with {process.returncode}")
        self.judge(samples, took_s)

    def judge(self, samples, took_s):
        with open(os.path.join(self.audit, "decisions.jsonl"), "rb") as file:
            lines = file.read().count(b"\n")
        print(f"review: {self.requests} requests in {took_s:.0f} s, {lines} lines in the ledger at the end, {self.counts.get('asked too fast', 0)} times told to slow down")
        for part in range(5):
            some = samples[len(samples) * part // 5: len(samples) * (part + 1) // 5]
            print(f"  fifth {part + 1}: at most {max(s.resident for s in some) / MIB:.0f} MiB, {max(s.handles for s in some)} handles, {max(s.threads for s in some)} threads")
        second, last = samples[len(samples) // 5: len(samples) * 2 // 5], samples[len(samples) * 4 // 5:]
        for name, most in (("resident", MOST_REVIEW_MORE), ("handles", MOST_HANDLES_MORE), ("threads", MOST_THREADS_MORE)):
            before, after = (max(getattr(sample, name) for sample in some) for some in (second, last))
            self.check(after <= before + most, f"{name}: {before} in the second fifth, {after} in the last")
        for name, times in sorted(self.times.items()):
            fifth = max(1, len(times) // 5)
            first, last = (statistics.median(took for _, took in some) for some in (times[:fifth], times[-fifth:]))
            print(f"  {name}: {len(times)} times, median {first:.1f} ms in the first fifth, {last:.1f} ms in the last")
            most = MOST_DECISION_MS if name in ("decide", "withdraw", "stale") else 3000 if name == "tables" else max(first * MOST_SLOWER_TIMES, first + MOST_SLOWER_MS)
            self.check(last <= most, f"{name} got slower: {first:.1f} ms, {last:.1f} ms")
        self.compare()

    # Tables and pages are what a run gives that never saw the server.
    def compare(self):
        fresh = self.at("fresh")
        os.makedirs(fresh)
        shutil.copy(os.path.join(self.audit, "decisions.jsonl"), fresh)
        subprocess.run([self.program, "screen", self.study, "--setup", os.path.join(self.study, "setup.toml"), "--out", fresh], check=True, capture_output=True)
        left_out = (".decisions.lock",)
        wrong = [path for path in differing(content(self.audit, left_out), content(fresh, left_out)) if not path.endswith(".png")]
        self.check(not wrong, f"files differ from those of a fresh run: {wrong}")


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("--minutes", type=float, default=60)
    words.add_argument("--requests", type=int, default=10000)
    words.add_argument("--only", choices=["follow", "review"])
    words.add_argument("--seed", type=int, default=1)
    words.add_argument("--trace")
    given = words.parse_args()
    program = os.path.abspath(given.program)
    if given.trace:
        os.makedirs(given.trace, exist_ok=True)
    faults = []
    for name in [given.only] if given.only else ["follow", "review"]:
        with tempfile.TemporaryDirectory() as work:
            campaign = Follow(program, work, given.minutes, given.trace) if name == "follow" else Review(program, work, given.requests, given.seed, given.trace)
            campaign.run()
            faults += campaign.faults
    for fault in faults:
        print(fault, file=sys.stderr)
    print(f"{len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
