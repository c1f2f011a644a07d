using System.Diagnostics;
using ChannelAudit.Fuzz;
using SharpFuzz;

// fuzz TARGET: below afl-fuzz. fuzz TARGET FILE...: those files once each, with what came of them.
string folder = Directory.CreateTempSubdirectory("channelaudit-fuzz-").FullName;
try
{
    if (args.Length == 0 || !Targets.All.ContainsKey(args[0]))
    {
        Console.Error.WriteLine("usage: fuzz TARGET [FILE...]; TARGET: " + string.Join(' ', Targets.All.Keys.Order(StringComparer.Ordinal)));
        return 2;
    }

    if (args.Length == 1)
    {
        Fuzzer.Run(stream =>
        {
            using MemoryStream bytes = new();
            stream.CopyTo(bytes);
            Guarded.Run(args[0], bytes.ToArray(), folder);
        });
        return 0;
    }

    foreach (string file in args.Skip(1))
    {
        Stopwatch watch = Stopwatch.StartNew();
        string? fault = Guarded.Run(args[0], File.ReadAllBytes(file), folder);
        Console.WriteLine(FormattableString.Invariant($"{watch.ElapsedMilliseconds} ms {Path.GetFileName(file)}: {fault ?? "read"}"));
    }

    return 0;
}
finally
{
    Directory.Delete(folder, recursive: true);
}
