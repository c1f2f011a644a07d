namespace ChannelAudit.Recordings.Text;

/// <summary>One column of a delimited text, as its header and first rows describe it.</summary>
internal sealed record ColumnPlan
{
    /// <summary>Position from 0.</summary>
    public required int Position { get; init; }

    /// <summary>The name without its unit, or <c>column 3</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The label as it stands in the file, or <c>column 3</c>.</summary>
    public required string RawLabel { get; init; }

    /// <summary>What it is for.</summary>
    public required ColumnRole Role { get; init; }

    /// <summary>The unit that the file states, or null.</summary>
    public TextUnit? Unit { get; init; }

    /// <summary>Why it is not audited, or null.</summary>
    public string? NotAudited { get; init; }

    /// <summary>Whether a column of times holds clock times instead of numbers.</summary>
    public bool IsClock { get; init; }

    /// <summary>Whether the role was told from the numbers and not from the label.</summary>
    public bool IsGuessed { get; init; }

    /// <summary>Whether the first rows hold nothing in it.</summary>
    public bool IsEmptyAtFirst { get; init; }
}
