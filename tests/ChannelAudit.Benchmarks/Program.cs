using System.Globalization;
using BenchmarkDotNet.Running;
using ChannelAudit.Benchmarks;
using ChannelAudit.Benchmarks.Making;
using ChannelAudit.Synthesis;

const string Usage = """
    benchmarks kernels [options of BenchmarkDotNet]      times the kernels
    benchmarks make recording FILE SECONDS CHANNELS [SEED [EVERY]]
                                                         EDF+ of 2000 Hz: an event of 3 to 8 s every 10 s, or every EVERY s; 3600 4 is the hour of docs/benchmarks.md
    benchmarks make table EDF CSV                        the same samples as delimited text with a time column; the events stand beside it
    benchmarks split CSV                                 reads a text and splits every cell, with the text library alone
    """;

switch (args)
{
    case ["kernels", .. string[] rest]:
        BenchmarkSwitcher.FromAssembly(typeof(RecordingMaker).Assembly).Run(rest);
        return 0;
    case ["make", "recording", string path, string seconds, string channels, .. string[] more]:
        RecordingMaker.Write(
            path,
            Number(seconds),
            Number(channels),
            more is [string seed, ..] ? (ulong)Number(seed) : BenchmarkSession.Plan.Seed,
            more is [_, string every, ..] ? Number(every) : 0);
        return 0;
    case ["make", "table", string recording, string table]:
        TableMaker.Write(recording, table);
        return 0;
    case ["split", string table]:
        Console.Out.WriteLine(TableSplitter.CharactersOf(table).ToString(CultureInfo.InvariantCulture));
        return 0;
    default:
        Console.Error.WriteLine(Usage);
        return 2;
}

static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
