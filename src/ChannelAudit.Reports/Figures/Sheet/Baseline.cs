using ChannelAudit.Views;

namespace ChannelAudit.Reports.Figures.Sheet;

/// <summary>The baseline at any time, straight between the levels of the seconds.</summary>
internal static class Baseline
{
    /// <summary>The level at a time; the nearest one outside the levels, 0 without any.</summary>
    public static double At(ChannelView view, double seconds)
    {
        if (view.Levels.IsEmpty)
        {
            return 0;
        }

        int after = view.LevelTimesS.AsSpan().BinarySearch(seconds);
        after = after < 0 ? ~after : after;
        if (after == 0 || after >= view.Levels.Length)
        {
            return view.Levels[Math.Min(after, view.Levels.Length - 1)];
        }

        double share = (seconds - view.LevelTimesS[after - 1]) / (view.LevelTimesS[after] - view.LevelTimesS[after - 1]);
        return view.Levels[after - 1] + (share * (view.Levels[after] - view.Levels[after - 1]));
    }
}
