"""The rows of docs/benchmarks.md: each function measures one and gives its lines: work, held against, goal, found."""
import datetime
import os
import shutil

import agreement

MIB = 1024 * 1024


def verdict(is_met):
    return "met" if is_met else "**missed**"


def when():
    return f"{datetime.date.today().isoformat()}, {os.cpu_count()} cores"


def line(work, against, goal, found):
    return f"{work} | {against} | {goal} | {'; '.join(found)} | {when()}"


def screen(machine, program, recording, out, *more):
    """A run of screen into a folder that is not there: into one of an earlier run it would take over the results."""
    def run():
        shutil.rmtree(out, ignore_errors=True)
        return machine.run([program, "screen", recording, "--out", out, "--figures", "none", *more])
    return run


def hour(machine, options):
    """The hour against the floor and the reference."""
    recording = machine.make_recording("hour.edf", 3600, 4)
    untimed, tables_of, floor, reference = agreement.prepare(machine, recording)
    outs = {kind: machine.folder / f"hour-{kind}" for kind, _ in machine.kinds()}
    commands = {kind: screen(machine, place("channelaudit"), recording, outs[kind]) for kind, place in machine.kinds()}
    commands["floor"] = lambda: machine.run(floor, machine.folder / "hour-floor.tsv")
    commands["reference"] = reference
    took = machine.in_turns(commands)
    agreement.all_same(machine, recording, tables_of, 40000)
    for out in outs.values():
        agreement.same_files(untimed, out, "timed and untimed")
    least, other = took["floor"], took["reference"]
    return [
        line("`screen`, 1 h x 4 channels x 2000 Hz EDF, 360 trials, no figures", "C and FFTW, one thread, the same spectra and scans of samples",
             "CPU at most 3 x, wall at most 2.5 x",
             [f"floor {least.cpu:.2f} s of CPU, {least.wall:.2f} s"] + [of_floor(kind, took[kind], least, 3, 2.5) for kind in outs]),
        line("the same", "the same measures in NumPy and SciPy", "6 x less CPU, 8 x less memory",
             [f"reference {other.cpu:.1f} s of CPU, {other.mib:.0f} MiB"] + [
                 f"{kind} {took[kind].mib:.0f} MiB: {other.cpu / took[kind].cpu:.1f} x less CPU ({verdict(other.cpu >= 6 * took[kind].cpu)}), "
                 f"{other.mib / took[kind].mib:.1f} x less memory ({verdict(other.mib >= 8 * took[kind].mib)})" for kind in outs]),
    ]


def of_floor(kind, took, least, most_cpu, most_wall):
    cpu, wall = took.cpu / least.cpu, took.wall / least.wall
    return f"{kind} {took.cpu:.2f} s, {took.wall:.2f} s: {cpu:.1f} x ({verdict(cpu <= most_cpu)}), {wall:.1f} x ({verdict(wall <= most_wall)})"


def csv(machine, options):
    """The hour as text, against splitting it."""
    recording = machine.make_recording("hour.edf", 3600, 4)
    table = machine.make_table("hour.csv", recording)
    outs = {kind: machine.folder / f"csv-{kind}" for kind, _ in machine.kinds()}
    commands = {kind: screen(machine, place("channelaudit"), table, outs[kind]) for kind, place in machine.kinds()}
    commands["split"] = [machine.maker, "split", table]
    took = machine.in_turns(commands)
    from_edf = machine.folder / "hour-of-edf"
    screen(machine, machine.program("channelaudit"), recording, from_edf)()
    edf = {key: value for key, value in agreement.tables(from_edf / "recordings/hour").items() if key[-1] not in agreement.OF_RAILS}
    for out in outs.values():
        agreement.same(agreement.tables(out / "recordings/hour"), edf, "text and EDF", 60000)
    least = took["split"]
    return [line("the same from .csv (7.2 M rows: time and 4 channels)", "reading and splitting the bytes with the text library alone", "at most 2.5 x",
                 [f"splitting {least.cpu:.2f} s of CPU, {least.wall:.2f} s"] + [of_floor(kind, took[kind], least, 2.5, 2.5) for kind in outs])]


def day(machine, options):
    """Hours on 32 channels against one of them: time by the length, memory whatever the length."""
    hours = options.hours
    room, needed = shutil.disk_usage(machine.folder).free, hours * 3600 * 32 * 2000 * 2 + 4096 * MIB
    if room < needed:
        raise agreement.Disagreement(f"{needed / MIB:.0f} MiB of disk are needed in {machine.folder}, {room / MIB:.0f} are free")
    program, out, setup = machine.program("channelaudit"), machine.folder / "day-out", machine.folder / "adjacent32.toml"
    setup.write_text("".join(sites(32)))
    took = {}
    for length in (1, hours):
        recording = machine.make_recording(f"{length}h32.edf", length * 3600, 32, 3600, 240)
        try:
            took[length] = machine.in_turns({"": screen(machine, program, recording, out, "--setup", setup)}, 1)[""]
        finally:
            recording.unlink()
            shutil.rmtree(out, ignore_errors=True)
    one, all_ = took[1], took[hours]
    ratio = all_.cpu / one.cpu / hours
    return [line(f"{hours} h x 32 channels x 2000 Hz ({hours * 3600 * 32 * 4000 / 1e9:.1f} GB), an event every 4 min, each site's neighbour named", "one hour of it",
                 "linear in time, peak under 300 MiB and flat",
                 [f"1 h {one.cpu:.0f} s of CPU, {one.mib:.0f} MiB", f"{hours} h {all_.cpu:.0f} s, {all_.mib:.0f} MiB: {ratio:.2f} x an hour's time an hour "
                  f"({verdict(ratio <= 1.1)}), memory {verdict(all_.mib < 300 and all_.mib < 1.1 * one.mib)}"])]


def pairs(machine, options):
    """Two minutes of 4 to 128 channels, all pairs and adjacent ones only."""
    program, out = machine.program("channelaudit"), machine.folder / "pairs-out"
    counts = (4, 8, 16, 32, 64, 128)
    commands = {}
    for count in counts:
        recording = machine.make_recording(f"{count}ch.edf", 120, count)
        commands[count] = screen(machine, program, recording, out)
    setup = machine.folder / "adjacent.toml"
    setup.write_text("".join(sites(128)))
    commands["adjacent"] = screen(machine, program, machine.folder / "128ch.edf", out, "--setup", setup)
    took = machine.in_turns(commands, min(machine.times, 3))
    number = {count: count * (count - 1) // 2 for count in counts}
    per_pair = [took[count].cpu / number[count] for count in counts]
    falls = all(later <= 1.1 * sooner for sooner, later in zip(per_pair, per_pair[1:]))
    return [line("pairs, 4 to 128 channels, 2 min", "the number of pairs", "grows no faster; adjacent ones only, where the setup names them",
                 [", ".join(f"{count}: {took[count].cpu:.2f} s" for count in counts) + f": {1000 * per_pair[-2]:.1f} and {1000 * per_pair[-1]:.1f} ms a pair at the end "
                  f"({verdict(falls)})", f"128 with each its two neighbours named: {took['adjacent'].cpu:.2f} s"])]


def sites(count):
    """A row of sites, each adjacent to the next."""
    names = ["cheek", "brow", "eye", "lip"] + [f"site{i}" for i in range(5, count + 1)]
    for at, name in enumerate(names):
        near = f'adjacent = ["{names[at + 1]}"]\n' if at + 1 < count else ""
        yield f'[[sites]]\nname = "{name}"\nchannel = "EMG {name}"\n{near}\n'


def pilot(machine, options):
    """Three minutes with the picture against a process that draws one empty picture."""
    recording = machine.make_recording("three.edf", 180, 4)
    out = machine.folder / "pilot-out"
    commands = {}
    for kind, place in machine.kinds():
        commands[kind] = [place("channelaudit"), "pilot", recording, "--out", out]
        commands[kind + " blank"] = [place("blank"), machine.folder / "blank.png"]
    took = machine.in_turns(commands)
    return [line("`pilot` of 3 min with picture", "a process that draws one empty ScottPlot PNG", "at most 4 x", against_own(machine, took, "blank", 4))]


def against_own(machine, took, other, most):
    """Wall time of each build against a program built the same way."""
    return [f"{kind} {took[kind].wall:.3f} s / {took[f'{kind} {other}'].wall:.3f} s: {took[kind].wall / took[f'{kind} {other}'].wall:.1f} x "
            f"({verdict(took[kind].wall <= most * took[f'{kind} {other}'].wall)})" for kind, _ in machine.kinds()]


def help_(machine, options):
    """The start of the program."""
    commands = {}
    for kind, place in machine.kinds():
        commands[kind] = [place("channelaudit"), "--help"]
        commands[kind + " empty"] = [place("empty")]
    took = machine.in_turns(commands, 4 * machine.times)
    found = against_own(machine, took, "empty", 1.5)
    if machine.builds:
        found.append(f"native under 10 ms: {verdict(took['native'].wall < 0.010)}")
    return [line("`--help`", "an empty .NET console program built the same way", "at most 1.5 x; native build under 10 ms", found)]


def folder(machine, options):
    """Twenty recordings on two cores against one."""
    study = machine.folder / "study"
    study.mkdir(exist_ok=True)
    for number in range(1, 21):
        machine.make_recording(f"study/R{number:02}.edf", 300, 4, number)
    commands, outs, found = {}, [], []
    for kind, place in machine.kinds():
        for jobs in (1, 2):
            outs.append(machine.folder / f"study-{kind}-{jobs}")
            commands[kind, jobs] = screen(machine, place("channelaudit"), study, outs[-1], "--jobs", str(jobs))
    took = machine.in_turns(commands)
    for out in outs[1:]:
        agreement.same_files(outs[0], out, "one core and two")
    for kind, _ in machine.kinds():
        one, two = took[kind, 1], took[kind, 2]
        found.append(f"{kind} {one.wall:.2f} s and {two.wall:.2f} s: {one.wall / two.wall:.2f} x ({verdict(one.wall >= 1.7 * two.wall)}), {one.mib:.0f} and {two.mib:.0f} MiB")
    return [line("a folder of 20 recordings of 5 min, 2 cores", "1 core", "1.7 x as fast", found)]


ALL = {"hour": hour, "csv": csv, "day": day, "pairs": pairs, "pilot": pilot, "help": help_, "folder": folder}
