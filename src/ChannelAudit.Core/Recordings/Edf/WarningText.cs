using System.Globalization;
using System.Runtime.CompilerServices;

namespace ChannelAudit.Recordings.Edf;

/// <summary>The words of a warning, put together only when warnings of its kind are still kept: a damaged file has one for every few of its bytes.</summary>
[InterpolatedStringHandler]
internal ref struct WarningText
{
    private DefaultInterpolatedStringHandler words;

    /// <summary>Made by the compiler from an interpolated string.</summary>
    /// <param name="literalLength">Characters outside the holes.</param>
    /// <param name="formattedCount">Holes.</param>
    /// <param name="warnings">Who is told.</param>
    /// <param name="kind">The kind of the warning.</param>
    /// <param name="isWanted">Whether the holes are filled in at all.</param>
    public WarningText(int literalLength, int formattedCount, EdfWarnings warnings, string kind, out bool isWanted)
    {
        isWanted = warnings.Keeps(kind);
        words = isWanted ? new DefaultInterpolatedStringHandler(literalLength, formattedCount, CultureInfo.InvariantCulture) : default;
    }

    /// <summary>Adds what stands outside the holes.</summary>
    public void AppendLiteral(string value) => words.AppendLiteral(value);

    /// <summary>Fills a hole in.</summary>
    public void AppendFormatted<T>(T value) => words.AppendFormatted(value);

    /// <summary>The words; empty when the warning is not kept.</summary>
    public string ToStringAndClear() => words.ToStringAndClear();
}
