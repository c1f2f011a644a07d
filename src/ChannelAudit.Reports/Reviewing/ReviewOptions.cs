namespace ChannelAudit.Reports.Reviewing;

/// <summary>How an audit is reviewed.</summary>
public sealed record ReviewOptions
{
    /// <summary>The folder of the audit.</summary>
    public required string Folder { get; init; }

    /// <summary>The folder that holds the recordings, below which their recorded paths lead to them; null: only the pictures of the audit are shown.</summary>
    public string? DataRoot { get; init; }

    /// <summary>The version of the program: whoever decides on an audit of another one could not bring its tables up to date. Null: it is not asked for.</summary>
    public string? Version { get; init; }

    /// <summary>Who decides; null when nobody does.</summary>
    public string? By { get; init; }

    /// <summary>Whether condition, computed verdict and other people's decisions are hidden.</summary>
    public bool IsBlind { get; init; }

    /// <summary>Whether nothing can be decided.</summary>
    public bool IsReadOnly { get; init; }

    /// <summary>The seed of the order of a blind review; null: that of this person's last blind decision, or a new one.</summary>
    public uint? Seed { get; init; }

    /// <summary>Which cells are to be looked at; null: every one in a blind review, else those that do not pass.</summary>
    public ReviewScope? Scope { get; init; }
}
