using ChannelAudit.Reports.Figures.Drawing;

namespace ChannelAudit.Reports.Tests.Figures;

/// <summary>What holds for the texts of every picture.</summary>
internal static class LabelChecks
{
    private const float Tolerance = 0.01f;
    private const float LeastSize = 14;

    /// <summary>No two texts share any room.</summary>
    public static void DoNotOverlap(Picture picture)
    {
        Label[] labels = [.. picture.Labels.OrderBy(label => label.Area.Top)];
        for (int first = 0; first < labels.Length; first++)
        {
            for (int second = first + 1; second < labels.Length && labels[second].Area.Top < labels[first].Area.Bottom; second++)
            {
                Assert.False(
                    labels[first].Area.Inset(Tolerance).Overlaps(labels[second].Area.Inset(Tolerance)),
                    $"'{labels[first].Text}' {labels[first].Area} and '{labels[second].Text}' {labels[second].Area}");
            }
        }
    }

    /// <summary>Every text is at least 14 pixels high and inside the picture.</summary>
    public static void AreLegibleAndInside(Picture picture) => Assert.All(picture.Labels, label =>
    {
        Assert.True(label.Style.Size >= LeastSize, label.Text);
        Assert.True(label.Area.Left >= 0 && label.Area.Right <= picture.Width && label.Area.Bottom <= picture.Height, $"{label.Text} {label.Area}");
    });
}
