using System.Globalization;
using System.Text;
using ChannelAudit.Synthesis;

namespace ChannelAudit.Calibration.Archive;

/// <summary>Writes the invented archive "two labs": recordings over three years, the setup and the readings beside them.</summary>
internal static class ArchiveFolder
{
    /// <summary>Makes everything; files of the same names are replaced.</summary>
    /// <param name="folder">Where to: <c>recordings/</c>, <c>setup.toml</c>, <c>readings.tsv</c>.</param>
    /// <param name="recordings">How many.</param>
    /// <param name="seed">Decides everything that is drawn.</param>
    /// <exception cref="IOException">When a file cannot be written.</exception>
    internal static void Write(string folder, int recordings, ulong seed)
    {
        string root = Directory.CreateDirectory(folder).FullName;
        foreach (string lab in new[] { "north", "south" })
        {
            Directory.CreateDirectory(Path.Combine(root, "recordings", lab));
        }

        string[] readings = new string[recordings];

        // Recordings share nothing, so their bytes do not depend on how many are made at once.
        ParallelOptions asManyAsCores = new() { MaxDegreeOfParallelism = Environment.ProcessorCount };
        Parallel.For(0, recordings, asManyAsCores, i =>
        {
            ArchiveSession session = new(seed, i, recordings);
            EdfFiles.Write(MadeRecording.Make(session.Plan), Path.Combine(root, "recordings", session.Name + ".edf"));
            string id = session.Name.Replace('/', '+');
            readings[i] = string.Concat(session.Readings.Select(line => $"{line}\t{id}\n"));
        });
        File.WriteAllText(Path.Combine(root, "readings.tsv"), "site\tpair\tkohm\ttime\tphase\trecording\n" + string.Concat(readings));
        File.WriteAllText(Path.Combine(root, "setup.toml"), Setup());
    }

    private static string Setup()
    {
        StringBuilder text = new("[recording]\nmains_hz = 50.0\n");
        foreach (SitePlan site in SitePlan.Face)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n[[sites]]\nname = \"{site.Name}\"\nmuscle = \"{site.Muscle}\"\nchannel = \"{site.Label}\"\n");
        }

        text.Append("\n[trials]\nfrom = \"annotations\"\nrest = [\"rest\"]\n\n[participants]\npath = \"*/{date}_*\"\n");
        Match(text, "north/*", "lab = \"north\"");
        Match(text, "south/*", "lab = \"south\"");
        foreach (string amplifier in new[] { "A", "B" })
        {
            Match(text, $"*/*_{amplifier}_*", $"amplifier = \"{amplifier}\"");
        }

        for (int i = 1; i <= 4; i++)
        {
            string technician = $"T{i.ToString(CultureInfo.InvariantCulture)}";
            Match(text, $"*/*_{technician}_*", $"technician = \"{technician}\"");
        }

        foreach (SitePlan site in SitePlan.Face)
        {
            foreach ((int first, int second) in ArchiveSession.Pairs)
            {
                string pool = site.Name[..1];
                string ids = string.Create(CultureInfo.InvariantCulture, $"\"{pool.ToUpperInvariant()}{first}\", \"{pool.ToUpperInvariant()}{second}\"");
                Match(text, string.Create(CultureInfo.InvariantCulture, $"*/*_{pool}{first}{second}_*"), $"electrodes = {{ {site.Name} = [{ids}] }}");
            }
        }

        return text.ToString();
    }

    private static void Match(StringBuilder text, string pattern, string line) => text.Append($"\n[[recordings]]\nmatch = \"{pattern}\"\n{line}\n");
}
