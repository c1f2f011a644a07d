using System.Collections.Immutable;

namespace ChannelAudit.Reports.Manual;

/// <summary>Breaks text between words into lines of a width; words longer than that stay whole.</summary>
internal static class WrappedText
{
    /// <summary>The lines, at least one.</summary>
    /// <param name="text">The text; any white space counts as one space.</param>
    /// <param name="width">The most characters of a line.</param>
    public static ImmutableArray<string> Lines(string text, int width)
    {
        ImmutableArray<string>.Builder lines = ImmutableArray.CreateBuilder<string>();
        string line = string.Empty;
        foreach (string word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                lines.Add(line);
                line = string.Empty;
            }

            line = line.Length == 0 ? word : $"{line} {word}";
        }

        lines.Add(line);
        return lines.ToImmutable();
    }
}
