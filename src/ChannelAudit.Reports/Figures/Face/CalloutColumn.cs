using ChannelAudit.Reports.Figures.Drawing;

namespace ChannelAudit.Reports.Figures.Face;

/// <summary>The callouts on one side of the face: each as near to the height of its pair as its neighbours allow.</summary>
internal static class CalloutColumn
{
    /// <summary>Draws them, and returns the rooms that they take.</summary>
    /// <param name="picture">Where to.</param>
    /// <param name="pairs">The pairs on this side.</param>
    /// <param name="isRight">Whether on the right.</param>
    /// <param name="edge">Where the face ends on this side.</param>
    /// <param name="box">The panel: top and bottom bound the column, its side the names.</param>
    public static IEnumerable<Area> Draw(Picture picture, IEnumerable<SitePair> pairs, bool isRight, float edge, Area box)
    {
        SitePair[] sorted = [.. pairs.OrderBy(pair => pair.Outer(isRight).Y)];
        float[] heights = Spread([.. sorted.Select(pair => pair.Outer(isRight).Y)], box.Top + (Callout.Height / 2), box.Bottom - (Callout.Height / 2));
        float width = isRight ? box.Right - edge : edge - box.Left;
        return [.. sorted.Select((pair, i) => new Callout(pair, isRight).Draw(picture, edge, width, heights[i]))];
    }

    // Downwards until nothing overlaps; what leaves the bottom is pushed back up. More than fit stand closer.
    private static float[] Spread(float[] wanted, float least, float most)
    {
        float apart = wanted.Length < 2 ? Callout.Height : Math.Min(Callout.Height, (most - least) / (wanted.Length - 1));
        float[] heights = [.. wanted];
        for (int i = 0; i < heights.Length; i++)
        {
            heights[i] = Math.Max(heights[i], i == 0 ? least : heights[i - 1] + apart);
        }

        for (int i = heights.Length - 1; i >= 0; i--)
        {
            heights[i] = Math.Min(heights[i], i == heights.Length - 1 ? most : heights[i + 1] - apart);
        }

        return heights;
    }
}
