using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Recordings;
using ChannelAudit.Text;

namespace ChannelAudit.Events;

/// <summary>Finds and reads the companions of a recording: <c>*_events.tsv</c>, <c>*_channels.tsv</c>, <c>*_emg.json</c>. They are never required and never edited.</summary>
/// <remarks>
/// Source: BIDS specification, "The inheritance principle". A companion belongs to a recording when each <c>key-value</c> part of its name is a part of the
/// recording's name; the most specific one in the nearest folder wins. Folders above are searched up to the one with <c>dataset_description.json</c>, and only when
/// there is one. A recording with an ordinary name (<c>rec1.csv</c>) has <c>rec1_events.tsv</c> and so on beside it. A companion that cannot be read is passed over
/// with a warning; an events table is read later, when trials are made of it.
/// </remarks>
public static class BidsCompanions
{
    /// <summary>The file that makes a folder a data set.</summary>
    internal const string DescriptionName = "dataset_description.json";

    private const int HighestFolder = 4;

    // A folder that may be entered but not listed shows no companions.
    private static readonly EnumerationOptions Listable = new() { IgnoreInaccessible = true, MatchCasing = MatchCasing.PlatformDefault, AttributesToSkip = FileAttributes.None };

    /// <summary>Finds the companions of a recording.</summary>
    /// <param name="path">The recording; it need not exist.</param>
    public static RecordingCompanions Find(string path)
    {
        ImmutableArray<string> folders = Folders(path);
        string stem = Path.GetFileNameWithoutExtension(path);
        string? events = Nearest(folders, stem, "_events.tsv");
        string? channels = Nearest(folders, stem, "_channels.tsv");
        ImmutableArray<string> sidecars = [.. folders.Select(folder => Best(folder, stem, "_emg.json")).OfType<string>()];
        ImmutableArray<Warning>.Builder warnings = ImmutableArray.CreateBuilder<Warning>();
        ImmutableArray<BidsChannel> rows = channels is null ? [] : ReadChannels(channels, warnings);
        double? mains = null;
        double? rate = null;
        string? filters = null;
        foreach (string sidecar in sidecars)
        {
            ReadSidecar(sidecar, ref mains, ref rate, ref filters, warnings);
        }

        return new RecordingCompanions
        {
            EventsPath = events,
            ChannelsPath = channels,
            SidecarPath = sidecars.FirstOrDefault(),
            Channels = rows,
            PowerLineHz = mains,
            SamplingHz = rate,
            SoftwareFilters = filters is { Length: > 0 } ? filters : null,
            Warnings = warnings.ToImmutable(),
        };
    }

    /// <summary>The companions of a recording that are read, in a fixed order.</summary>
    /// <param name="path">The recording; it need not exist.</param>
    public static ImmutableArray<string> FilesOf(string path)
    {
        ImmutableArray<string> folders = Folders(path);
        string stem = Path.GetFileNameWithoutExtension(path);
        return
        [
            .. new[] { Nearest(folders, stem, "_events.tsv"), Nearest(folders, stem, "_channels.tsv") }.OfType<string>(),
            .. folders.Select(folder => Best(folder, stem, "_emg.json")).OfType<string>(),
        ];
    }

    // Nearest first; only the recording's own folder unless it lies in a data set.
    private static ImmutableArray<string> Folders(string path)
    {
        List<string> folders = [];
        string? folder = Path.GetDirectoryName(Path.GetFullPath(path));
        for (int level = 0; folder is not null && level < HighestFolder; level++)
        {
            folders.Add(folder);
            if (File.Exists(Path.Combine(folder, DescriptionName)))
            {
                return [.. folders];
            }

            folder = Path.GetDirectoryName(folder);
        }

        return folders.Count == 0 ? [] : [folders[0]];
    }

    private static string? Nearest(ImmutableArray<string> folders, string stem, string ending) =>
        folders.Select(folder => Best(folder, stem, ending)).FirstOrDefault(found => found is not null);

    private static string? Best(string folder, string stem, string ending)
    {
        if (!Directory.Exists(folder))
        {
            return null;
        }

        string own = stem.EndsWith("_emg", StringComparison.Ordinal) ? stem[..^4] : stem;
        HashSet<string> parts = new(own.Split('_'), StringComparer.Ordinal);
        return Directory.EnumerateFiles(folder, "*" + ending, Listable)
            .Where(found => Belongs(Path.GetFileName(found)[..^ending.Length], own, parts))
            .OrderByDescending(found => Path.GetFileName(found).Count(sign => sign == '_'))
            .ThenBy(found => found, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    private static bool Belongs(string name, string own, HashSet<string> parts) =>
        string.Equals(name, own, StringComparison.Ordinal)
        || name.Split('_').All(part => part.Contains('-', StringComparison.Ordinal) && parts.Contains(part));

    private static ImmutableArray<BidsChannel> ReadChannels(string path, ImmutableArray<Warning>.Builder warnings)
    {
        string file = Path.GetFileName(path);
        try
        {
            ImmutableArray<BidsChannel> rows = BidsChannels.Read(path);
            if (rows.IsEmpty)
            {
                warnings.Add(new Warning(file, "header", "no channel named; not used"));
            }

            return rows;
        }
        catch (ChannelAuditException fault)
        {
            warnings.Add(new Warning(file, "table", $"not used: {fault.Message}"));
            return [];
        }
    }

    // Nearer sidecars are read first; what they say stands.
    private static void ReadSidecar(string path, ref double? mains, ref double? rate, ref string? filters, ImmutableArray<Warning>.Builder warnings)
    {
        string file = Path.GetFileName(path);
        try
        {
            JsonDocumentOptions options = new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true };
            using JsonDocument document = StrictJson.Parse(PlainFile.ReadAllBytes(path), options);
            mains ??= Number(document.RootElement, "PowerLineFrequency");
            rate ??= Number(document.RootElement, "SamplingFrequency");
            filters ??= Filters(document.RootElement);
        }
        catch (Exception fault) when (fault is JsonException or IOException or UnauthorizedAccessException)
        {
            string place = fault is JsonException { LineNumber: { } line } ? FormattableString.Invariant($"line {line + 1}") : "file";
            warnings.Add(new Warning(file, place, "not used: not valid JSON, or it cannot be read"));
        }
    }

    // Null when the key is not there; empty for "n/a", which a nearer sidecar may say.
    private static string? Filters(JsonElement root) =>
        root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("SoftwareFilters", out JsonElement value) ? null
        : value.ValueKind == JsonValueKind.Object ? string.Join(", ", value.EnumerateObject().Select(filter => OneLine.Of(filter.Name)))
        : string.Empty;

    private static double? Number(JsonElement root, string name) =>
        root.ValueKind == JsonValueKind.Object && root.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.Number
            && value.TryGetDouble(out double number) && number > 0
            ? number
            : null;
}
