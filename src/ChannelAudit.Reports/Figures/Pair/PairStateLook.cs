using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Views;
using ScottPlot;

namespace ChannelAudit.Reports.Figures.Pair;

/// <summary>How seconds and curves of each state look: a mark, a colour and a line each.</summary>
internal static class PairStateLook
{
    /// <summary>The colour.</summary>
    public static Color InkOf(PairState state) => state switch
    {
        PairState.Rest => Inks.Ink,
        PairState.ActiveA => Inks.PassLine,
        PairState.ActiveB or PairState.ActiveBoth => Inks.QuestionableLine,
        _ => Inks.OpenLine,
    };

    /// <summary>The words.</summary>
    public static string WordsOf(PairSubject subject, PairState state) => state switch
    {
        PairState.Rest => "both at rest",
        PairState.ActiveA => $"{subject.NameA} contracts",
        PairState.ActiveB => $"{subject.NameB} contracts",
        PairState.ActiveBoth => "both contract",
        _ => "neither",
    };

    /// <summary>Draws a mark at each point: rest a full disc, the first site a triangle upwards, the second downwards, both a lozenge, other a small grey square.</summary>
    public static void Marks(Picture picture, PairState state, IReadOnlyList<Pixel> points, float size)
    {
        float half = state == PairState.Other ? Math.Max(1, size / 4) : size / 2;
        Pixel[] corners = state switch
        {
            PairState.Rest => [],
            PairState.ActiveA => [new(0, -half), new(half, half), new(-half, half)],
            PairState.ActiveB => [new(0, half), new(half, -half), new(-half, -half)],
            PairState.ActiveBoth => [new(0, -half), new(half, 0), new(0, half), new(-half, 0)],
            _ => [new(-half, -half), new(half, -half), new(half, half), new(-half, half)],
        };
        picture.Stamps(points, corners, size - 1.5f, state == PairState.ActiveA ? Color.FromARGB(0) : InkOf(state), InkOf(state));
    }
}
