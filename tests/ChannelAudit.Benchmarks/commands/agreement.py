"""Whether the tables of screen say the same as the reference in SciPy and the floor in C, and the same whatever build or file they come from."""
import decimal
import filecmp
import json
import math

RELATIVE = 1e-6   # nine digits are written, and sums run in another order
ABSOLUTE = 1e-12  # of values that are nothing but rounding

# Text states no rails: what is counted from them has no value there, or another one.
OF_RAILS = {"clipped", "clipped_run", "clipped_effect", "clipped_shift", "peak_use", "headroom"}


class Disagreement(Exception):
    """Two programs give different numbers."""


def cells(path, keys):
    """The numbers of a table by their keys; measures.tsv has one number a line, pairs.tsv several."""
    with open(path) as file:
        heading = file.readline().rstrip("\n").split("\t")
        for line in file:
            row = line.rstrip("\n").split("\t")
            if heading[2] == "measure":
                yield tuple(row[:3]), row[3]
            else:
                for name, value in zip(heading[keys:], row[keys:]):
                    yield (*row[:keys], name), value


def tables(folder):
    """All numbers of a folder with measures.tsv and pairs.tsv."""
    return dict(cells(folder / "measures.tsv", 3)) | dict(cells(folder / "pairs.tsv", 3))


def floor_table(path):
    """The floor's lines: scope, one or two channels, measure, value."""
    with open(path) as file:
        rows = [line.rstrip("\n").split("\t") for line in file]
    return {(*row[1:-2], row[0], row[-2]): row[-1] for row in rows}


def same(one, other, what, least):
    """Holds numbers that both have against each other; at least so many must be there."""
    compared = 0
    for key, value in other.items():
        if one.get(key, "n/a") == "n/a" or value in ("n/a", "nan", "-inf"):
            continue
        a, b = float(one[key]), float(value)
        if not math.isclose(a, b, rel_tol=RELATIVE, abs_tol=ABSOLUTE):
            raise Disagreement(f"{what}: {' / '.join(key)}: {one[key]} and {value}")
        compared += 1
    if compared < least:
        raise Disagreement(f"{what}: only {compared} numbers to compare, {least} expected")
    print(f"{what}: {compared} numbers agree", flush=True)


def same_files(one, other, what):
    """Every file of two output folders, byte for byte."""
    compared = filecmp.dircmp(one, other)
    todo = [compared]
    while todo:
        folder = todo.pop()
        _, differ, broken = filecmp.cmpfiles(folder.left, folder.right, folder.common_files, shallow=False)
        if folder.left_only or folder.right_only or differ or broken:
            raise Disagreement(f"{what}: {folder.left} and {folder.right} differ: {folder.left_only + folder.right_only + differ + broken}")
        todo += folder.subdirs.values()


def write_trials(result, rate, path):
    """First sample and length of every trial, for the floor."""
    with open(path, "w") as file:
        for trial in result["trials"]:
            first, end = (int((decimal.Decimal(str(trial[side])) * rate).to_integral_value(decimal.ROUND_HALF_UP)) for side in ("window_from_s", "window_to_s"))
            file.write(f"{first} {end - first}\n")


def prepare(machine, recording):
    """The untimed screen of a recording and the folder of its tables, the floor's and the reference's commands."""
    name = recording.stem
    out = machine.folder / f"{name}-untimed"
    machine.quietly(machine.program("channelaudit"), "screen", recording, "--out", out, "--figures", "none")
    tables_of = out / "recordings" / name
    result = json.loads((tables_of / "result.json").read_text())
    trials = machine.folder / f"{name}-trials.txt"
    write_trials(result, 2000, trials)
    reference = machine.folder / f"{name}-reference"
    reference.mkdir(exist_ok=True)
    floor = [machine.floor, recording, trials, repr(result["mains"]["hz"])]
    return out, tables_of, floor, [*machine.reference, recording, reference]


def all_same(machine, recording, tables_of, numbers):
    """Holds the tables against what floor and reference left in the folder."""
    ours = tables(tables_of)
    same(ours, tables(machine.folder / f"{recording.stem}-reference"), "screen and reference", numbers)
    same(ours, floor_table(machine.folder / f"{recording.stem}-floor.tsv"), "screen and floor", numbers // 4)


def check(machine):
    """Two minutes: the same comparisons as on the hour, in seconds."""
    recording = machine.make_recording("short.edf", 120, 4)
    _, tables_of, floor, reference = prepare(machine, recording)
    machine.run(floor, machine.folder / "short-floor.tsv")
    machine.run(reference)
    all_same(machine, recording, tables_of, 1500)
