#!/usr/bin/env python3
"""Recordings of the right form whose numbers no amplifier would write: rates, record durations, physical limits, jumps in time, huge and tiny values, hundreds of channels, events upon events.

    python3 tests/campaigns/extremes.py PROGRAM FOLDER [NAME...]

PROGRAM (channelaudit) screens each in a folder of its own with at most 4 GiB of managed memory. A fault is an exit code that is none of ours, a bug's message, more than 60 s, or more than 100 MiB written for a recording of less than 6 MiB.
NAMEs choose the recordings that have one of them in their name. Prints a line a recording and how many faults; ends with 1 when there is one. Python's standard library only.
"""
import os
import pathlib
import random
import shutil
import subprocess
import sys
import time

OURS = (0, 1, 2, 3)
LONGEST_S = 60
LARGEST_MIB = 100
MOST_SAMPLES = 200_000


def edf(path, signals=1, records=30, duration="1", samples="1000", physical=("-3276.8", "3276.7"), digital=("-32768", "32767"), unit="uV"):
    head = f"{'0':<8}{'X X X X':<80}{'Startdate X X X X':<80}{'01.01.26':<8}{'10.00.00':<8}{256 * (signals + 1):<8}{'':<44}{records:<8}{duration:<8}{signals:<4}"
    fields = ((None, 16), ("", 80), (unit, 8), (physical[0], 8), (physical[1], 8), (digital[0], 8), (digital[1], 8), ("", 80), (samples, 8), ("", 32))
    for text, width in fields:
        head += "".join(f"{f'site {i}' if text is None else text:<{width}}"[:width] for i in range(signals))
    noise = random.Random(1)
    stored = min(int(samples) * signals * records, MOST_SAMPLES)
    path.write_bytes(head.encode("latin-1") + b"".join(int(noise.gauss(0, 100)).to_bytes(2, "little", signed=True) for _ in range(stored)))


def text(path, times, value=None):
    noise = random.Random(2)
    value = value or (lambda: f"{noise.gauss(0, 3):.2f}")
    path.write_text("time (s),cheek (uV)\n" + "".join(f"{at},{value()}\n" for at in times), encoding="utf-8")


def jump(seconds, parts):
    return [f"{i * 1e-3 + seconds * (i // 3000):.3f}" for i in range(3000 * parts)]


def cases():
    noise = random.Random(3)
    even = [f"{i * 1e-3:.3f}" for i in range(5000)]
    for duration in ("0.000001", "0.0000001", "1E-7", ".001", "0.01", "10", "100", "10000", "1000000", "99999999", "1E20", "0"):
        for samples in ("1", "10", "1000", "60000"):
            yield f"record of {duration} s with {samples} samples.edf", lambda path, d=duration, s=samples: edf(path, duration=d, samples=s, records=3)
    for physical in (("-1E30", "1E30"), ("-1E17", "1E17"), ("-1E-30", "1E-30"), ("0", "1E-300"), ("-1E300", "1E300"), ("-0", "0"), ("1", "1"), ("5", "-5")):
        yield f"physical {physical[0]} to {physical[1]}.edf", lambda path, p=physical: edf(path, physical=p)
    for digital in (("0", "1"), ("-32768", "-32767"), ("32767", "-32768"), ("5", "5"), ("-1E5", "1E5")):
        yield f"digital {digital[0]} to {digital[1]}.edf", lambda path, d=digital: edf(path, digital=d)
    yield "records without end.edf", lambda path: edf(path, records=99999999, samples="1")
    yield "records of a day.edf", lambda path: edf(path, records=20000, samples="1", duration="100000")
    yield "many channels.edf", lambda path: edf(path, signals=256, records=2, samples="60")
    for step in (1e-25, 1e-9, 1e-7, 1e-6, 1, 1e3, 3600, 1e6, 7e13):
        yield f"steps of {step:g} s.csv", lambda path, s=step: text(path, [f"{i * s:.30f}" if s < 1 else f"{i * s:.0f}" for i in range(5000)])
    for size in ("1e300", "1e30", "1e17", "1e-30", "1e-300"):
        yield f"values of {size}.csv", lambda path, s=size: text(path, even, lambda: repr(noise.gauss(0, float(s))))
    yield "values of all sizes.csv", lambda path: text(path, even, lambda: noise.choice(["1e308", "-1e308", "1", "0", "1e-308"]))
    for seconds in (1e3, 3600, 86300, 86400, 1e6, 1e9, 1e15, 1e18, 1e20, 1e300):
        for parts in (2, 3):
            yield f"{parts - 1} jumps of {seconds:g} s.csv", lambda path, s=seconds, p=parts: text(path, jump(s, p))


    for onset, duration in (("1e300", "1"), ("1", "1e300"), ("-1e300", "1"), ("1", "1e-300"), ("1e17", "1"), ("29", "1e9"), ("0", "0"), ("1e-28", "1e28")):
        yield f"event at {onset} for {duration} s.edf", lambda path, o=onset, d=duration: events(path, [(o, d)])
    for count, step, duration in ((300_000, 0.0001, 1), (20_000, 0.0001, 30), (5_000, 0.006, 0.001)):
        yield f"{count} events of {duration} s.edf", lambda path, c=count, s=step, d=duration: events(path, [(f"{i * s:.4f}", d) for i in range(c)])


def events(path, rows):
    edf(path)
    path.with_name(path.stem + "_events.tsv").write_text("onset\tduration\ttrial_type\n" + "".join(f"{onset}\t{duration}\tx\n" for onset, duration in rows), encoding="utf-8")


def screen(program, folder, name, make):
    shutil.rmtree(folder, ignore_errors=True)
    (folder / "in").mkdir(parents=True)
    make(folder / "in" / name)
    started = time.monotonic()
    try:
        done = subprocess.run([program, "screen", "in", "--out", "out"], cwd=folder, capture_output=True, text=True, timeout=LONGEST_S, check=False, env=dict(os.environ, DOTNET_GCHeapHardLimit="0x100000000"))
    except subprocess.TimeoutExpired:
        return f"more than {LONGEST_S} s", True
    written = sum(file.stat().st_size for file in (folder / "out").rglob("*") if file.is_file()) >> 20 if (folder / "out").exists() else 0
    said = next((line for line in done.stderr.splitlines() if line.startswith("error:")), "done")
    return f"{done.returncode}, {time.monotonic() - started:.1f} s, {written} MiB: {said}", done.returncode not in OURS or "bug in channelaudit" in done.stderr or written > LARGEST_MIB


def main():
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    program, folder, chosen = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2]).resolve(), sys.argv[3:]
    tried, faults = 0, 0
    for name, make in cases():
        if chosen and not any(word in name for word in chosen):
            continue
        found, is_fault = screen(program, folder / "case", name, make)
        tried, faults = tried + 1, faults + is_fault
        print(f"{'FAULT ' if is_fault else ''}{name}: {found}", flush=True)
    shutil.rmtree(folder / "case", ignore_errors=True)
    print(f"{tried} recordings, {faults} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
