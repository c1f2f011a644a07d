using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Ribbon;
using ChannelAudit.Results;
using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>What a pair sheet is about, and its sizes.</summary>
/// <param name="Recording">The recording.</param>
/// <param name="Result">The pair's rows and medians.</param>
/// <param name="View">What is drawn.</param>
/// <param name="Scale">Sizes of text and space.</param>
internal sealed record PairSubject(RecordingResult Recording, PairResult Result, PairView View, RibbonScale Scale)
{
    private const int LongestName = 24;

    /// <summary>The first channel's name, shortened where it would fill the picture.</summary>
    public string NameA => Short(Result.ChannelA);

    /// <summary>The second channel's name.</summary>
    public string NameB => Short(Result.ChannelB);

    /// <summary>The text of axes and panels.</summary>
    public TextStyle Note => Scale.Note;

    private static string Short(string name)
    {
        string plain = PlainText.Of(name);
        return plain.Length <= LongestName ? plain : plain[..(LongestName - 1)].TrimEnd() + "\u2026";
    }
}
