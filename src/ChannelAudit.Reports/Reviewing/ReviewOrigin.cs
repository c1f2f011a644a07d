using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Reports.Reviewing;

/// <summary>The origin of a line that was written from the page: <c>review</c>, or with more to say <c>review:seed=42:cells=flagged</c> or <c>review:like=7</c>.</summary>
internal sealed class ReviewOrigin
{
    private const string Page = "review";
    private const string LikeKey = "like";

    private readonly ImmutableArray<(string Key, string Value)> _parts;

    private ReviewOrigin(IEnumerable<(string Key, string Value)> parts) => _parts = [.. parts];

    /// <summary>Of a decision with everything in view.</summary>
    public static ReviewOrigin Open { get; } = new([]);

    /// <summary>The line that a trial was decided with, without being looked at by itself; null when it was.</summary>
    public int? Like => int.TryParse(this[LikeKey], NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : null;

    /// <summary>The value of a part; null without one.</summary>
    public string? this[string key] => _parts.Where(part => string.Equals(part.Key, key, StringComparison.Ordinal)).Select(part => part.Value).FirstOrDefault();

    /// <summary>Of a trial that is decided as another one is.</summary>
    /// <param name="number">The line of that one.</param>
    public static ReviewOrigin AsIn(int number) => new([(LikeKey, number.ToString(CultureInfo.InvariantCulture))]);

    /// <summary>Of a blind decision.</summary>
    public static ReviewOrigin Blind(BlindOrder order) => new(order.Parts);

    /// <summary>Reads an origin.</summary>
    /// <returns>What it says; null when the line was not written from the page.</returns>
    public static ReviewOrigin? Read(string text)
    {
        string[] words = text.Split(':');
        return string.Equals(words[0], Page, StringComparison.Ordinal)
            ? new ReviewOrigin(words.Skip(1).Select(word => word.Split('=', 2)).Where(pair => pair.Length == 2).Select(pair => (pair[0], pair[1])))
            : null;
    }

    /// <inheritdoc/>
    public override string ToString() => string.Concat([Page, .. _parts.Select(part => $":{part.Key}={part.Value}")]);
}
