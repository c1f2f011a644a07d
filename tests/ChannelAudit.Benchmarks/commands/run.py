#!/usr/bin/python3
"""Times whole commands against what they are held against, checks that all agree on the numbers, and writes the table of docs/benchmarks.md.

    tests/ChannelAudit.Benchmarks/commands/run.py [--in FOLDER] [--times 5] [--no-build] [--no-table] ROW...

Rows: check hour csv day pairs pilot help folder. All but check write their lines of the table; check only compares numbers, on a short recording.
Needs the .NET SDK, a C compiler, libfftw3-dev and python3-scipy. Programs take turns, one after the other, and medians count: what else a shared machine does then
meets all alike.
"""
import argparse
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

import agreement
import rows
from measuring import Machine

HERE = pathlib.Path(__file__).resolve().parent
ROOT = HERE.parents[2]
PAGE = ROOT / "docs" / "benchmarks.md"
BEGIN, END = "<!-- begin: written by run.py -->", "<!-- end -->"


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--in", dest="folder", help="where recordings and outputs go; a new folder that vanishes, unless named")
    parser.add_argument("--times", type=int, default=5, help="runs of each program")
    parser.add_argument("--hours", type=int, default=24, help="of the long recording of day")
    parser.add_argument("--no-build", action="store_true", help="the ordinary build is there; measure it alone, without the native one")
    parser.add_argument("--no-table", action="store_true", help="print the lines and leave the page as it is")
    parser.add_argument("rows", nargs="+", choices=["check", *rows.ALL])
    options = parser.parse_args()
    folder = pathlib.Path(options.folder or tempfile.mkdtemp(prefix="channelaudit-benchmarks-"))
    folder.mkdir(parents=True, exist_ok=True)
    try:
        machine = Machine(ROOT, folder, options.times, not options.no_build)
        machine.build()
        for row in options.rows:
            if row == "check":
                agreement.check(machine)
            else:
                write(row, rows.ALL[row](machine, options), options.no_table)
    finally:
        if not options.folder:
            shutil.rmtree(folder)


def write(row, lines, is_only_printed):
    """Puts the lines of a row in the place of those that the page has."""
    command = f"| `run.py {row}` |"
    lines = [f"| {line} {command}" for line in lines]
    print("\n".join(lines), flush=True)
    if is_only_printed:
        return
    text = PAGE.read_text()
    head, _, rest = text.partition(BEGIN)
    table, _, tail = rest.partition(END)
    kept = [line for line in table.strip().split("\n") if not line.endswith(command)]
    heading, others = kept[:2], kept[2:]
    of = {name: [line for line in others if line.endswith(f"| `run.py {name}` |")] for name in rows.ALL}
    of[row] = lines
    body = "\n".join(heading + [line for name in rows.ALL for line in of[name]])
    PAGE.write_text(f"{head}{BEGIN}\n{body}\n{END}{tail}")


if __name__ == "__main__":
    os.environ.update(DOTNET_CLI_TELEMETRY_OPTOUT="1", DOTNET_NOLOGO="1", OMP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1")
    try:
        main()
    except (agreement.Disagreement, subprocess.CalledProcessError) as fault:
        sys.exit(f"error: {fault}")
