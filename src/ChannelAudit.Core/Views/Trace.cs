using System.Collections.Immutable;

namespace ChannelAudit.Views;

/// <summary>A stretch of a channel as a picture can show it: the least and the greatest sample in each of equal columns of time.</summary>
/// <param name="FromS">Start of the first column, seconds from the first stored sample.</param>
/// <param name="ToS">End of the last column.</param>
/// <param name="Least">The least sample of each column, in the unit of the channel; NaN where none is stored.</param>
/// <param name="Greatest">The greatest sample of each column; NaN where none is stored.</param>
public sealed record Trace(double FromS, double ToS, ImmutableArray<double> Least, ImmutableArray<double> Greatest)
{
    /// <summary>Number of columns.</summary>
    public int Columns => Least.Length;

    /// <summary>The middle of a column in seconds.</summary>
    public double TimeOf(int column) => FromS + ((column + 0.5) * (ToS - FromS) / Columns);
}
