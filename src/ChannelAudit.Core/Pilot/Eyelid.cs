namespace ChannelAudit.Pilot;

/// <summary>Which sites lie at the eyelid: those whose muscle, name or label speaks of the eye and not of the brow.</summary>
internal static class Eyelid
{
    private static readonly string[] Lid = ["ocul", "eye", "lid"];
    private static readonly string[] Brow = ["brow", "corrugator", "supercili"];

    /// <summary>Whether words speak of the eyelid.</summary>
    /// <param name="words">The muscle, or name and label.</param>
    public static bool Is(string words) => Speaks(words, Lid) && !Speaks(words, Brow);

    private static bool Speaks(string words, string[] of) => of.Any(word => words.Contains(word, StringComparison.OrdinalIgnoreCase));
}
