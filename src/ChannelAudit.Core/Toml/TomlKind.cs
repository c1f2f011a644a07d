namespace ChannelAudit.Toml;

/// <summary>What a value in a setup or criteria file is.</summary>
internal enum TomlKind
{
    /// <summary>Text in quotes.</summary>
    Text,

    /// <summary>A whole number.</summary>
    Integer,

    /// <summary>A number with a decimal point or an exponent, or <c>nan</c> or <c>inf</c>.</summary>
    Float,

    /// <summary><c>true</c> or <c>false</c>.</summary>
    Truth,

    /// <summary>A day without a time.</summary>
    Date,

    /// <summary>A time, or a day with a time.</summary>
    Time,

    /// <summary>A list in brackets, or several tables of one name.</summary>
    List,

    /// <summary>A table.</summary>
    Table,
}
