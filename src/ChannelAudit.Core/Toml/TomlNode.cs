namespace ChannelAudit.Toml;

/// <summary>A value and the line it stands in, counted from 1.</summary>
internal sealed class TomlNode
{
    /// <summary>What it is.</summary>
    public required TomlKind Kind { get; init; }

    /// <summary>The line in which its key stands; of an item of a list, its own line.</summary>
    public required int Line { get; init; }

    /// <summary>The text of a text, and any other simple value as it was written.</summary>
    public string Text { get; init; } = string.Empty;

    /// <summary>The value of a number.</summary>
    public double Number { get; init; }

    /// <summary>The items of a list.</summary>
    public List<TomlNode> Items { get; } = [];

    /// <summary>The entries of a table in file order.</summary>
    public OrderedDictionary<string, TomlNode> Entries { get; } = new(StringComparer.Ordinal);

    /// <summary>Whether nothing may be added any more: written in braces or brackets.</summary>
    public bool IsClosed { get; init; }

    /// <summary>Whether a header of its own has named this table.</summary>
    public bool HasHeader { get; set; }

    /// <summary>Whether it is a number.</summary>
    public bool IsNumber => Kind is TomlKind.Integer or TomlKind.Float;

    /// <summary>What it is, in words for a message.</summary>
    public string KindInWords => Kind switch
    {
        TomlKind.Text => "text",
        TomlKind.Integer or TomlKind.Float => "a number",
        TomlKind.Truth => "true or false",
        TomlKind.Date => "a date",
        TomlKind.Time => "a time",
        TomlKind.List => "a list",
        _ => "a table",
    };
}
