namespace ChannelAudit.Recordings.Text;

/// <summary>A cell of a plain row.</summary>
/// <param name="From">Its first byte.</param>
/// <param name="To">The byte behind its last.</param>
/// <param name="Value">Its number; not a number where it was not read as one.</param>
/// <param name="Decimals">Digits behind the decimal sign.</param>
/// <param name="IsNumber">Whether it was read as a number; else its text is to be looked at.</param>
/// <param name="IsBlank">Whether nothing stands in it.</param>
internal readonly record struct PlainCell(int From, int To, double Value, int Decimals, bool IsNumber, bool IsBlank);
