"""Programs that are built once and run in turns: CPU, wall time and peak memory of a process and its children."""
import os
import statistics
import subprocess
import time


class Usage:
    """What a run took: seconds of CPU and on the wall, MiB at the peak."""

    def __init__(self, cpu, wall, mib):
        self.cpu, self.wall, self.mib = cpu, wall, mib


class Machine:
    """The repository, a folder to work in, and the programs."""

    def __init__(self, root, folder, times, builds):
        self.root, self.folder, self.times, self.builds = root, folder, times, builds
        projects = root / "tests/ChannelAudit.Benchmarks"
        self.projects = {
            "channelaudit": root / "src/ChannelAudit.Cli", "empty": projects / "commands/empty", "blank": projects / "commands/blank",
        }
        self.maker = projects / "bin/Release/net10.0/benchmarks"
        self.floor = folder / "floor"
        self.reference = ["/usr/bin/python3", projects / "commands/reference.py"]

    def program(self, name):
        """The ordinary build."""
        return self.projects[name] / "bin/Release/net10.0" / name

    def native(self, name):
        """The native build."""
        return self.folder / "native" / name / name

    def kinds(self):
        """How a program can be had: a word for the table, and where it lies."""
        return [("ordinary", self.program)] + ([("native", self.native)] if self.builds else [])

    def build(self):
        source = self.root / "tests/ChannelAudit.Benchmarks/commands/floor.c"
        self.quietly("cc", "-O3", "-march=native", "-o", self.floor, source, "-lfftw3", "-lm")
        if not self.builds:
            return
        quick = ["-p:RunAnalyzers=false", "-v", "q"]
        self.quietly("dotnet", "build", self.maker.parents[3], "-c", "Release", *quick)
        for name, project in self.projects.items():
            self.quietly("dotnet", "build", project, "-c", "Release", *quick)
            self.quietly("dotnet", "publish", project, "-p:PublishProfile=Native", f"-p:PublishDir={self.native(name).parent}/", *quick)

    def quietly(self, *command):
        """Runs a command that is not timed; what it prints is shown when it fails."""
        done = subprocess.run([str(part) for part in command], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, cwd=self.folder, text=True)
        if done.returncode != 0:
            print(done.stdout[-4000:])
            done.check_returncode()
        return done.stdout

    def make_recording(self, name, seconds, channels, *seed_and_pause):
        """An EDF recording; made once."""
        path = self.folder / name
        if not path.exists():
            self.quietly(self.maker, "make", "recording", path, seconds, channels, *seed_and_pause)
        return path

    def make_table(self, name, recording):
        """A recording as text, its events beside it; made once."""
        path = self.folder / name
        if not path.exists():
            self.quietly(self.maker, "make", "table", recording, path)
        return path

    def run(self, command, output=None):
        """Runs a command once."""
        start = time.perf_counter()
        with open(output or os.devnull, "w") as target:
            process = subprocess.Popen([str(part) for part in command], stdout=target, stderr=subprocess.PIPE, cwd=self.folder)
            errors = process.stderr.read().decode()
            _, status, usage = os.wait4(process.pid, 0)
        process.returncode = os.waitstatus_to_exitcode(status)
        if process.returncode != 0:
            print(errors[-4000:])
            raise subprocess.CalledProcessError(process.returncode, process.args)
        return Usage(usage.ru_utime + usage.ru_stime, time.perf_counter() - start, usage.ru_maxrss / 1024)

    def in_turns(self, commands, times=None):
        """Runs named commands, each in turn, several times: the medians of each. A command may be a function that runs it."""
        runs = {name: [] for name in commands}
        for _ in range(times or self.times):
            for name, command in commands.items():
                runs[name].append(command() if callable(command) else self.run(command))
        return {name: Usage(*(statistics.median(getattr(run, part) for run in own) for part in ("cpu", "wall", "mib"))) for name, own in runs.items()}
