#!/usr/bin/env python3
"""Gives the program hostile texts wherever it takes a text, and looks whether they stay text.

    python3 tests/campaigns/text.py PROGRAM [--browser] [--keep FOLDER]

Markup, scripts, addresses, formulas, control sequences, marks that turn or hide text, path parts, shell words, bytes that are no UTF-8 and 10 kB at once: as labels of channels, trials,
conditions, names of files and sites, reasons, names of persons and raters, sources of limits. A fault is: a code that is none of ours, more than 60 s, a control or format character on
the console, a cell that a spreadsheet would run, an element, attribute or address of a page that did not come from us, JSON that does not parse, a picture that is none, a file outside
the folder that was named, a name of our own tables that our own readers do not find again. --browser opens every report in Chromium too (fixtures/browser, npm ci).
Python's standard library only.
"""
import argparse
import base64
import csv
import hashlib
import html.parser
import io
import json
import math
import os
import re
import shutil
import struct
import subprocess
import sys
import tempfile
import time
import unicodedata

HOSTILE = [
    "<script>window.hacked=1</script>", "\"><img src=x onerror=window.hacked=1>", "</title></style></script><svg onload=window.hacked=1>", "javascript:window.hacked=1", "<!--", "]]>",
    "' onmouseover='window.hacked=1", "&lt;b&gt;&#60;i&#62;", "{{7*7}}${7*7}%s%n", "=cmd|' /C calc'!A0", "+1+1", "-1-1", "@SUM(A1)", "\t=1+1", "'=1", "''=1", "\r=1", "\uff1d1\uff0b1", "=1\n=2",
    "\x1b[2J\x1b]0;title\x07", "\x9b31mred", "\x08\x08\x7f", "\u202egnp.exe", "\u2066isolate\u2069", "\u200b\u200d\ufeff", "\u2028line\u2029", "e\u0301" * 40, "\u0338" * 60, "\ufdfd" * 40,
    "../../../../escaped", "/tmp/escaped", "..\\..\\escaped", "C:\\escaped", "CON", "a/b", "%2e%2e%2fescaped", "$(touch escaped)", "`touch escaped`", "; touch escaped", "-rf", "--out", "n/a", " ", "NaN",
    "\U0001d11e" * 30, "\u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d\u0628\u0627", "\ufffe\uffff", "x" * 10000, "\u00e9 " * 5000, "\U0001f600" * 2500, "<b>" * 3000, "\u202e" * 3000,
]
NO_TEXT = [b"\xff\xfe\xfd", b"\xed\xa0\x80half", b"\xc0\xafover", b"=\xff", b"\xf5\x80\x80\x80", b"a\x00b"]
FORMULA = tuple("=+-@\t\r\n\uff1d\uff0b\uff0d\uff20")
NUMBER = re.compile(r"[-+]?\d+(\.\d+)?([eE][-+]?\d+)?\Z")
MOST_S = 60
RATE = 1000


def edf(path, labels, trials, seconds):
    """An EDF+ recording of noise: labels are bytes, trials (onset, duration, bytes)."""
    texts = [b"+%d\x14\x14\0" % second + b"".join(b"+%.3f\x15%.3f\x14%s\x14\0" % trial for trial in trials if int(trial[0]) == second) for second in range(seconds)]
    width = (max(map(len, texts)) + 3) // 2
    count = len(labels) + 1
    def column(values, size):
        return b"".join(value[:size].ljust(size) for value in values)
    head = b"0".ljust(8) + b"X X X X".ljust(80) + b"Startdate X X X X".ljust(80) + b"01.01.0000.00.00" + str(256 * (count + 1)).encode().ljust(8) + b"EDF+C".ljust(44) + str(seconds).encode().ljust(8) \
        + b"1".ljust(8) + str(count).encode().ljust(4)
    signals = len(labels)
    head += column([*labels, b"EDF Annotations"], 16) + b" " * 80 * count + column([b"uV"] * signals + [b""], 8) + column([b"-3276.8"] * signals + [b"-1"], 8) + column([b"3276.7"] * signals + [b"1"], 8)
    head += column([b"-32768"] * count, 8) + column([b"32767"] * count, 8) + b" " * 80 * count + column([str(RATE).encode()] * signals + [str(width).encode()], 8) + b" " * 32 * count
    state = 12345
    with open(path, "wb") as file:
        file.write(head)
        for second in range(seconds):
            for signal in range(signals):
                samples = []
                for _ in range(RATE):
                    state = (state * 1103515245 + 12345 + signal) & 0x7FFFFFFF
                    samples.append(int(((state >> 8) % 2001 - 1000) / 12))
                file.write(struct.pack(f"<{RATE}h", *samples))
            file.write(texts[second].ljust(2 * width, b"\0"))


def bytes_of(text, most=None):
    data = text if isinstance(text, bytes) else text.encode("utf-8", "surrogatepass")
    return data if most is None else data[:most]


class Page(html.parser.HTMLParser):
    """Collects what a page could run, load or lead to."""

    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.found, self.scripts, self.policy, self.inside = [], [], "", False

    def handle_starttag(self, tag, attrs):
        self.inside = tag == "script"
        if self.inside:
            self.scripts.append("")
        for name, value in attrs:
            value = value or ""
            if name.startswith("on") or (name in ("href", "src", "action", "formaction", "xlink:href", "data", "poster") and re.match(r"\s*(javascript|vbscript|https?|file|//)", value, re.IGNORECASE)):
                self.found.append(f"<{tag} {name}={value[:60]!r}>")
            if name == "content" and "default-src" in value:
                self.policy = value
        if tag in ("iframe", "object", "embed", "base", "form", "link"):
            self.found.append(f"<{tag}>")

    def handle_endtag(self, tag):
        self.inside = False

    def handle_data(self, data):
        if self.inside:
            self.scripts[-1] += data


class Campaign:
    def __init__(self, program, work, browser):
        self.program, self.work, self.browser = os.path.abspath(program), work, browser
        self.faults, self.counts, self.slowest = [], {}, ("", 0.0)
        os.makedirs(self.at("in"))
        self.before = None

    def at(self, *parts):
        return os.path.join(self.work, *parts)

    def fault(self, what):
        self.faults.append("".join(c if c.isprintable() else f"\\u{ord(c):04x}" for c in what)[:300])
        print(self.faults[-1], file=sys.stderr, flush=True)

    def count(self, what, number=1):
        self.counts[what] = self.counts.get(what, 0) + number

    def run(self, *words):
        """Runs a command; its code and both streams are looked at."""
        started = time.monotonic()
        done = subprocess.run([self.program, *words], cwd=self.work, capture_output=True, check=False, timeout=600)
        took = time.monotonic() - started
        name = " ".join(str(word)[:30] for word in words[:3])
        self.slowest = max(self.slowest, (name, took), key=lambda one: one[1])
        self.count("commands")
        self.count(f"commands that ended with {done.returncode}")
        if done.returncode not in (0, 1, 2, 3):
            self.fault(f"{name}: ended with {done.returncode}: {done.stderr[:200]!r}")
        if took > MOST_S:
            self.fault(f"{name}: {took:.0f} s")
        for stream in (done.stdout, done.stderr):
            try:
                text = stream.decode()
            except UnicodeDecodeError:
                self.fault(f"{name}: says what is no UTF-8")
                continue
            odd = sorted({f"U+{ord(c):04X}" for c in text if c not in "\n\t" and unicodedata.category(c) in ("Cc", "Cf", "Zl", "Zp", "Cs")})
            if odd:
                self.fault(f"{name}: says {odd}: {next(line for line in text.splitlines() if any(unicodedata.category(c) in ('Cc', 'Cf', 'Zl', 'Zp', 'Cs') for c in line))!r}")
        errors = [line for line in done.stderr.decode(errors="replace").splitlines() if line.startswith("error: ")]
        if done.returncode == 2 and len(errors) != 1:
            self.fault(f"{name}: {len(errors)} error lines")
        return done

    def look(self, folder):
        """Every file of an output: is it what its name says, and inert?"""
        for place, _, names in os.walk(os.fsencode(self.at(folder))):
            for name in names:
                path = os.path.join(place, name)
                shown = os.path.relpath(path, os.fsencode(self.work)).decode(errors="replace")
                if not all(c in "._+%() #-" or unicodedata.category(c)[0] in "LNM" for c in name.decode(errors="replace")):
                    self.fault(f"{shown}: an odd name for a file of ours")
                with open(path, "rb") as file:
                    data = file.read()
                kind = shown.rsplit(".", 1)[-1]
                self.count(f"{kind} files")
                looks = {"tsv": self.table, "html": self.page, "json": self.json, "png": self.picture}
                if kind in looks:
                    looks[kind](shown, data)

    def table(self, name, data):
        text = data.decode()
        odd = {c for c in text if c not in "\n\t" and unicodedata.category(c) == "Cc"}
        if odd:
            self.fault(f"{name}: control characters {odd!r}")
        for line, row in enumerate(csv.reader(io.StringIO(text, newline=""), delimiter="\t", strict=True), 1):
            for cell in row:
                self.count("cells")
                if cell.startswith(FORMULA) and not NUMBER.match(cell):
                    self.fault(f"{name}, row {line}: a spreadsheet would run {cell[:40]!r}")

    def page(self, name, data):
        page = Page()
        page.feed(data.decode())
        for found in page.found:
            self.fault(f"{name}: {found}")
        hashes = set(re.findall(r"'sha256-([^']+)'", page.policy))
        for script in page.scripts:
            if base64.b64encode(hashlib.sha256(script.encode()).digest()).decode() not in hashes:
                self.fault(f"{name}: a script that the page's policy does not name: {script[:60]!r}")
        if "default-src 'none'" not in page.policy:
            self.fault(f"{name}: no policy")

    def json(self, name, data):
        json.loads(data)
        if any(byte < 0x20 and byte != 0x0A for byte in data):
            self.fault(f"{name}: control characters")

    def picture(self, name, data):
        if not (data.startswith(b"\x89PNG\r\n\x1a\n") and data.endswith(b"IEND\xaeB`\x82")):
            self.fault(f"{name}: no picture")
        width, height = struct.unpack(">II", data[16:24])
        if max(width, height) > 6000:
            self.fault(f"{name}: {width} x {height}")

    def screen(self, path, out, *more):
        done = self.run("screen", path, "--out", out, *more)
        if os.path.isdir(self.at(out)):
            self.look(out)
            report = self.at(out, "report.html")
            if self.browser and os.path.exists(report):
                self.open(out)
        return done

    def open(self, out):
        walk = os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "..", "fixtures", "browser", "inert.mjs")
        done = subprocess.run(["node", walk, self.at(out)], capture_output=True, text=True, check=False, timeout=600)
        self.count("reports in Chromium")
        if done.returncode != 0:
            self.fault(f"{out} in Chromium: {done.stdout[-300:]} {done.stderr[-300:]}")

    # Where texts come in.
    def trials(self):
        """Labels of trials, which are conditions: EDF+ annotations, 53 of them."""
        texts = [bytes_of(text).replace(b"\x14", b"").replace(b"\x15", b"").replace(b"\0", b"") for text in [*HOSTILE, *NO_TEXT]]
        edf(self.at("in", "trials.edf"), [b"EMG cheek", b"EMG eye"], [(2 * place, 1.5, text or b"x") for place, text in enumerate(texts)], 2 * len(texts) + 2)
        self.screen("in/trials.edf", "trials", "--figures", "all")
        self.run("setup", "new", "in/trials.edf", "--out", "new.toml")
        self.run("setup", "check", "new.toml", "in/trials.edf")
        self.run("pilot", "in/trials.edf", "--out", "piloted")
        self.look("piloted")
        self.run("export", "bids", "trials", "--to", "bids")
        self.look("bids")
        self.run("export", "bundle", "trials", "--data", "in", "--to", "bundle.zip")
        self.run("verify", "bundle.zip")

    def labels(self):
        """Labels of channels: 16 bytes of an EDF header each, ten in a file; whole ones in a text file."""
        texts = [bytes_of(text, 16) or b"x" for text in [*HOSTILE, *NO_TEXT]]
        for part in range(0, len(texts), 10):
            edf(self.at("in", f"labels{part}.edf"), texts[part:part + 10], [(1, 3.0, b"calm"), (5, 3.0, b"=calm")], 10)
            self.screen(f"in/labels{part}.edf", f"labels{part}", "--figures", "all")
        rows = [" ".join("%.3f" % math.sin(row * 0.37 + place) for place in range(len(HOSTILE))).split() for row in range(4 * RATE)]
        with open(self.at("in", "text.csv"), "w", encoding="utf-8", newline="") as file:
            writer = csv.writer(file)
            writer.writerow(text.replace("\r", "").replace("\n", "") or "x" for text in HOSTILE)
            writer.writerows(rows)
        with open(self.at("in", "csv.toml"), "w", encoding="utf-8") as file:
            file.write("[recording]\nsampling_hz = 1000.0\nunit = \"uV\"\n")
        self.screen("in/text.csv", "text", "--setup", "in/csv.toml", "--figures", "none")

    def names(self):
        """Names of files."""
        os.makedirs(self.at("in", "names"))
        for place, text in enumerate([*HOSTILE, *NO_TEXT]):
            name = bytes_of(text).replace(b"/", b"").replace(b"\0", b"")[:60].lstrip(b".") + b"_%d.edf" % place
            edf(os.path.join(os.fsencode(self.at("in", "names")), name), [b"EMG cheek"], [(0, 2.0, b"calm")], 2)
        self.screen("in/names", "names", "--figures", "summary")
        self.run("screen", "in/names", "--out", "names-again", "--figures", "none", "--verbose")

    def setups(self):
        """Everything a setup and a file of limits take."""
        edf(self.at("in", "site.edf"), [b"EMG cheek", b"EMG eye"], [(1, 3.0, b"smile"), (5, 3.0, b"calm")], 10)
        for place, text in enumerate(HOSTILE):
            quoted = json.dumps(text)
            with open(self.at("in", "site.toml"), "w", encoding="utf-8") as file:
                file.write(f"[recording]\namplifier = {quoted}\ntechnician = {quoted}\n[[sites]]\nname = {quoted}\nmuscle = {quoted}\nchannel = \"EMG cheek\"\nside = \"left\"\n"
                           f"electrodes = [{quoted}, \"b\"]\ntask = \"smile\"\n[[sites]]\nname = \"eye\"\nchannel = \"EMG eye\"\nadjacent = [{quoted}]\n[trials]\nrest = [{quoted}]\n")
            with open(self.at("in", "lab.toml"), "w", encoding="utf-8") as file:
                file.write(f"[drift]\nquestionable = []\nsource = {quoted}\n")
            self.screen("in/site.edf", f"site{place}", "--setup", "in/site.toml", "--criteria", "in/lab.toml", "--figures", "all" if place % 7 == 0 or len(text) > 1000 else "none")
            self.run("criteria", "check", "in/lab.toml")
        with open(self.at("in", "frozen.tsv"), "w", encoding="utf-8") as file:
            file.write("")
        for place, text in enumerate(["", *NO_TEXT]):
            with open(self.at("in", "bad.toml"), "wb") as file:
                file.write(b"[[sites]]\nname = \"" + bytes_of(text) + b"\"\nchannel = \"EMG cheek\"\n")
            self.run("setup", "check", "in/bad.toml", "in/site.edf")

    def persons(self):
        """Names and reasons of decisions, lists of exclusions, labels of raters, tables of events and readings."""
        self.screen("in/site.edf", "decided", "--figures", "none")
        kept = 0
        for text in HOSTILE:
            argument = text.replace("\0", "")
            for by, reason in (("R. Viewer", argument), (argument, "looked at")):
                kept += self.run("decide", "decided", "--recording", "site", "--trial", "1", "--verdict", "pass", f"--by={by}", f"--reason={reason}").returncode == 0
        self.count("decisions kept", kept)
        self.run("decide", "decided")
        self.look("decided")
        if self.browser:
            self.open("decided")
        for kind, write in (("exclusions", self.exclusions), ("raters", self.ratings), ("events", self.events), ("readings", self.readings)):
            for text in [*HOSTILE, *NO_TEXT]:
                with open(self.at("in", "list.tsv"), "wb") as file:
                    file.write(write(bytes_of(text)))
                # These commands write into nothing that is there already.
                shutil.rmtree(self.at("rated"), ignore_errors=True)
                self.remove("answers.tsv")
                if kind == "exclusions":
                    self.run("reconcile", "decided", "in/list.tsv", "--out", "answers.tsv")
                    self.table_of("answers.tsv")
                elif kind == "raters":
                    self.run("raters", "decided", "in/list.tsv", "--out", "rated")
                    self.look("rated")
                elif kind == "events":
                    self.run("screen", "in/site.edf", "--events", "in/list.tsv", "--out", "events", "--figures", "none")
                else:
                    self.run("impedance", "in/list.tsv")
        self.look("events")

    def remove(self, name):
        if os.path.exists(self.at(name)):
            os.remove(self.at(name))

    def table_of(self, name):
        if os.path.exists(self.at(name)):
            with open(self.at(name), "rb") as file:
                self.table(name, file.read())

    @staticmethod
    def quoted(text):
        return b'"' + text.replace(b'"', b'""') + b'"' if any(c in text for c in b'\t"') else text

    def exclusions(self, text):
        return b"recording\tchannel\ttrial\treason\nsite\tEMG cheek\t1\t" + self.quoted(text) + b"\n" + self.quoted(text) + b"\tEMG cheek\t1\tmoved\nsite\t" + self.quoted(text) + b"\t1\tmoved\n"

    def ratings(self, text):
        return b"recording\tchannel\ttrial\trater\tlabel\n" + b"".join(b"site\tEMG cheek\t%d\t%s\tbad\nsite\tEMG cheek\t%d\tB\tgood\n" % (trial, self.quoted(text), trial) for trial in (1, 2))

    def events(self, text):
        return b"onset\tduration\ttrial_type\n1\t3\t" + self.quoted(text) + b"\n5\t3\tcalm\n"

    def readings(self, text):
        return b"site\tpair\tkohm\ttime\tphase\n" + self.quoted(text) + b"\ta-b\t5\t10:00\tbefore\ncheek\ta-b\t5\t10:00\t" + self.quoted(text) + b"\n"

    def again(self):
        """Names from our own tables, as they stand there, in a list of exclusions: each is found."""
        for audit in ["names", *[f"labels{part}" for part in range(0, len(HOSTILE) + len(NO_TEXT), 10)]]:
            if not os.path.exists(self.at(audit, "verdicts.tsv")):
                continue
            with open(self.at(audit, "verdicts.tsv"), encoding="utf-8", newline="") as file:
                names = list(dict.fromkeys((row[0], row[1]) for row in csv.reader(file, delimiter="\t") if row[1] != "channel"))
            with open(self.at("in", "own.tsv"), "w", encoding="utf-8", newline="") as file:
                writer = csv.writer(file, delimiter="\t", lineterminator="\n")
                writer.writerow(["recording", "channel", "trial", "reason"])
                writer.writerows([*name, "1", "tried"] for name in names)
            self.remove("own.tsv")
            self.run("reconcile", audit, "in/own.tsv", "--out", "own.tsv")
            self.table_of("own.tsv")
            with open(self.at("own.tsv"), encoding="utf-8", newline="") as file:
                rows = list(csv.DictReader(file, delimiter="\t"))
            found = [row for row in rows if row["answer"] not in ("no-match", "n/a") and row["declared"] == "reject"]
            self.count("names of our tables found again", len(names))
            if len(found) < len(names):
                self.fault(f"{audit}: {len(names) - len(found)} of {len(names)} names of verdicts.tsv are not found again: {[row for row in rows if row not in found][:2]}")

    def outside(self):
        """Nothing was written anywhere else."""
        known = {"in", "bundle.zip", "new.toml", "answers.tsv", "own.tsv", "piloted", "bids", "trials", "text", "names", "names-again", "decided", "rated", "events"}
        odd = [name for name in os.listdir(self.work) if name not in known and not re.fullmatch(r"(labels|site)\d+", name)]
        if odd or os.path.exists("/tmp/escaped") or os.path.exists(self.at("..", "escaped")):
            self.fault(f"written elsewhere: {odd}")


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("--browser", action="store_true")
    words.add_argument("--keep")
    given = words.parse_args()
    with tempfile.TemporaryDirectory() as temporary:
        work = os.path.abspath(given.keep or temporary)
        os.makedirs(work, exist_ok=True)
        campaign = Campaign(given.program, work, given.browser)
        for step in (campaign.trials, campaign.labels, campaign.names, campaign.setups, campaign.persons, campaign.again, campaign.outside):
            started = time.monotonic()
            step()
            print(f"{step.__name__}: {time.monotonic() - started:.0f} s", flush=True)
        for what, number in sorted(campaign.counts.items()):
            print(f"{what}: {number}")
        print(f"slowest: {campaign.slowest[0]}, {campaign.slowest[1]:.1f} s")
        print(f"{len(HOSTILE) + len(NO_TEXT)} texts, {len(campaign.faults)} faults")
        return 1 if campaign.faults else 0


if __name__ == "__main__":
    sys.exit(main())
