namespace ChannelAudit.Reports.Silence;

/// <summary>The names of the files that a study of planted faults leaves.</summary>
public static class SilenceFiles
{
    /// <summary>Everything, for programs and for the report.</summary>
    public const string Json = "detectability.json";

    /// <summary>The table.</summary>
    public const string Table = "detectability.tsv";

    /// <summary>The picture.</summary>
    public const string Picture = "detectability.png";

    /// <summary>What the terminal showed.</summary>
    public const string Text = "detectability.txt";

    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } = [Json, Table, Picture, Text];
}
