#!/usr/bin/env python3
"""Runs docs/guides/cluster.md as it stands, on a real Slurm of one node and with a real Snakemake, and compares what comes of it with a run on one machine.

    python3 tests/campaigns/cluster.py PROGRAM [--study FOLDER] [--only slurm|snakemake]

Needs root and Debian's slurm-wlm, munge and snakemake. Without --study it is the demo's. One task of each is killed (SIGKILL) when it has finished a recording, and run again. Ends with 1
when an audit differs. Python's standard library only.
"""
import argparse
import filecmp
import os
import pathlib
import re
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parents[2]
GUIDE = ROOT / "docs" / "guides" / "cluster.md"
PATIENCE_S = 3600


def block(language):
    return re.search(rf"^```{language}\n(.*?)^```", GUIDE.read_text(encoding="utf-8"), re.S | re.M).group(1)


def differences(one, other):
    """Paths below two folders whose bytes differ, or that only one has."""
    files = [{path.relative_to(folder) for path in folder.rglob("*") if path.is_file()} for folder in (one, other)]
    return sorted(str(path) for path in files[0] ^ files[1]) + sorted(str(path) for path in files[0] & files[1] if not filecmp.cmp(one / path, other / path, shallow=False))


def wait(holds, what):
    end = time.monotonic() + PATIENCE_S
    while not holds():
        if time.monotonic() > end:
            raise SystemExit(f"error: waited {PATIENCE_S} s for {what}")
        time.sleep(0.02)


def processes(words):
    """Numbers of processes whose command line holds all words."""
    found = []
    for entry in pathlib.Path("/proc").iterdir():
        try:
            line = (entry / "cmdline").read_bytes().split(b"\0") if entry.name.isdigit() else []
        except OSError:
            continue
        if line and all(word.encode() in line for word in words) and line[0].endswith(b"channelaudit"):
            found.append(int(entry.name))
    return found


def kill_share(work, share, of):
    """Kills the program in the midst of a share: after its first recording, before its end."""
    place = work / "shares" / str(share)
    wait(lambda: list(place.glob("recordings/*/list.json")) or (place / "share.json").exists(), "a recording of the share")
    for process in processes(["--shard", f"{share}/{of}"]):
        os.kill(process, signal.SIGKILL)
    wait(lambda: not processes(["--shard", f"{share}/{of}"]), "its end")
    if (place / "share.json").exists():
        raise SystemExit("error: the share was done before it could be killed: give a larger --study")


class Slurm:
    """One node, in a folder of its own."""

    def __init__(self, folder):
        self.folder, self.running = folder, []
        host = socket.gethostname()
        for name in ("state", "spool"):
            (folder / name).mkdir(parents=True)
        (folder / "slurm.conf").write_text(
            f"""ClusterName=one
SlurmctldHost={host}(127.0.0.1)
SlurmUser=root
SlurmdUser=root
AuthType=auth/munge
ProctrackType=proctrack/pgid
TaskPlugin=task/none
SwitchType=switch/none
MpiDefault=none
ReturnToService=2
SlurmctldPort=16817
SlurmdPort=16818
SlurmctldPidFile={folder}/slurmctld.pid
SlurmdPidFile={folder}/slurmd.pid
SlurmdSpoolDir={folder}/spool
StateSaveLocation={folder}/state
SchedulerType=sched/backfill
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
AccountingStorageType=accounting_storage/none
JobAcctGatherType=jobacct_gather/none
JobCompType=jobcomp/none
NodeName={host} NodeAddr=127.0.0.1 CPUs={os.cpu_count()} State=UNKNOWN
PartitionName=all Nodes={host} Default=YES MaxTime=INFINITE State=UP
""")
        self.environment = dict(os.environ, SLURM_CONF=str(folder / "slurm.conf"))

    def __enter__(self):
        pathlib.Path("/run/munge").mkdir(exist_ok=True)
        shutil.chown("/run/munge", "munge", "munge")
        self.has_munge = subprocess.run(["munge", "-n"], capture_output=True, check=False).returncode == 0
        if not self.has_munge:
            subprocess.run(["runuser", "-u", "munge", "--", "/usr/sbin/munged", "--force"], check=True)
        for daemon in ("slurmctld", "slurmd"):
            with open(self.folder / f"{daemon}.log", "wb") as log:
                self.running.append(subprocess.Popen([daemon, "-D"], env=self.environment, stdout=log, stderr=log))
        wait(lambda: "idle" in self.say("sinfo", "-h", "-o", "%T"), "the node")
        return self

    def __exit__(self, *_):
        for daemon in reversed(self.running):
            daemon.terminate()
            daemon.wait()
        if not self.has_munge:
            subprocess.run(["pkill", "-x", "munged"], check=False)

    def say(self, *command, folder=None):
        done = subprocess.run(command, env=self.environment, cwd=folder, capture_output=True, text=True, check=False)
        return done.stdout.strip() if done.returncode == 0 else done.stderr

    def ends(self, job):
        wait(lambda: self.say("squeue", "-h", "-j", job) == "" or "Invalid job" in self.say("squeue", "-h", "-j", job), f"job {job}")


def by_slurm(work, environment, script=None):
    """Audits what lies in work in three shares, the second killed and sent again, and merges them into study-audit."""
    (work / "audit.sbatch").write_text(script or block("sh"))
    with Slurm(work / "slurm") as slurm:
        slurm.environment.update(PATH=environment["PATH"])
        job = slurm.say("sbatch", "--parsable", "audit.sbatch", folder=work)
        kill_share(work, 2, 3)
        slurm.ends(job)
        again = slurm.say("sbatch", "--parsable", "--array=2", "audit.sbatch", folder=work)
        merge = slurm.say("sbatch", "--parsable", f"--dependency=afterany:{again}", "--wrap", "channelaudit merge shares/1 shares/2 shares/3 --out study-audit", folder=work)
        slurm.ends(merge)
    print((work / "share-2.log").read_text().strip(), flush=True)


def by_snakemake(work, environment):
    (work / "Snakefile").write_text(block("python"))
    command = ["snakemake", "--cores", "1"]
    first = subprocess.Popen(command, cwd=work, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    first_share = {}
    def begun():
        first_share.update({share: True for share in (1, 2, 3) if list((work / "shares" / str(share)).glob("recordings/*/list.json"))})
        return first_share
    wait(begun, "a share")
    kill_share(work, next(iter(first_share)), 3)
    if first.wait() == 0:
        raise SystemExit("error: Snakemake did not see that a share was killed")
    done = subprocess.run([*command, "--rerun-incomplete"], cwd=work, env=environment, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        raise SystemExit(f"error: Snakemake: {done.stderr[-2000:]}")


def main():
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("program")
    words.add_argument("--study", help="a folder with recordings and setup.toml")
    words.add_argument("--only", choices=["slurm", "snakemake"])
    given = words.parse_args()
    with tempfile.TemporaryDirectory(prefix="channelaudit-cluster-") as folder:
        base = pathlib.Path(folder)
        (base / "bin").mkdir()
        (base / "bin" / "channelaudit").symlink_to(pathlib.Path(given.program).resolve())
        environment = dict(os.environ, PATH=f"{base / 'bin'}:{os.environ['PATH']}")
        study = given.study
        if not study:
            subprocess.run(["channelaudit", "demo", base / "demo"], env=environment, stdout=subprocess.DEVNULL, check=True)
            study = base / "demo" / "study"
        shutil.copytree(study, base / "study")
        subprocess.run(["channelaudit", "screen", "study", "--setup", "study/setup.toml", "--figures", "none", "--out", "single"], cwd=base, env=environment, stdout=subprocess.DEVNULL, check=False)
        faults = 0
        for name, way in (("slurm", by_slurm), ("snakemake", by_snakemake)):
            if given.only not in (None, name):
                continue
            work = base / name
            work.mkdir()
            (work / "study").symlink_to(base / "study")
            started = time.monotonic()
            way(work, environment)
            found = differences(base / "single", work / "study-audit") if (work / "study-audit").exists() else ["there is no audit"]
            faults += len(found)
            print(f"{name}: three shares, one killed and run again, merged in {time.monotonic() - started:.0f} s: " + (f"{len(found)} files differ: {', '.join(found[:5])}" if found else "the same bytes as one machine"), flush=True)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
