using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Runs;

/// <summary>A fixed part of the recordings of a run, for one of several machines: every Nth of the list, beginning with the Ith.</summary>
/// <remarks>Neighbours in the list are often of one length and one participant; dealt out in turn they spread over all machines.</remarks>
/// <param name="Number">Which, from 1.</param>
/// <param name="Of">Of how many.</param>
public readonly record struct RecordingShare(int Number, int Of)
{
    /// <summary>More are not dealt out.</summary>
    public const int Most = 100_000;

    /// <summary>Reads <c>2/8</c>, the second of eight; null when it is none.</summary>
    /// <param name="text">The text.</param>
    public static RecordingShare? Parse(string text)
    {
        string[] parts = text.Split('/');
        return parts.Length == 2 && Whole(parts[0]) is { } number && Whole(parts[1]) is { } of && number <= of ? new RecordingShare(number, of) : null;
    }

    /// <summary>Its part of a list.</summary>
    /// <param name="all">The whole list in its order.</param>
    /// <returns>As many as every other share has, or one less; none when there are more shares than entries.</returns>
    public ImmutableArray<T> From<T>(ImmutableArray<T> all)
    {
        (int first, int step) = (Number - 1, Of);
        return [.. all.Where((_, position) => position % step == first)];
    }

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Number}/{Of}");

    private static int? Whole(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) && value is >= 1 and <= Most ? value : null;
}
