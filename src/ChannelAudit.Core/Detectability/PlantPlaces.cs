namespace ChannelAudit.Detectability;

/// <summary>Where faults are planted.</summary>
internal static class PlantPlaces
{
    private const double LongestJointS = 180;
    private const double ShortestJointS = 60;
    private const int PartOfRecording = 5;

    private static readonly bool[] EitherWay = [false, true];

    /// <summary>Single trials of single channels, with some seconds on both sides.</summary>
    /// <param name="reason">The reason of which the trial is clean.</param>
    /// <param name="marginS">How long before and behind the trial's window the fault is there.</param>
    /// <param name="tailS">For how long behind that the samples are still changed.</param>
    public static Func<PlantHost, IEnumerable<PlantPlace>> InTrials(string reason, double marginS, double tailS = 0) => host =>
        from channel in Enumerable.Range(0, host.Audited.Length)
        from trial in host.CleanTrials(channel, reason)
        select new PlantPlace(
            channel, null, (double)host.Trials[trial].WindowFromS - marginS, (double)host.Trials[trial].WindowToS + marginS + tailS, [trial]);

    /// <summary>Whole channels; a trial that is not clean is not counted.</summary>
    /// <param name="reason">The reason.</param>
    public static Func<PlantHost, IEnumerable<PlantPlace>> InChannels(string reason) => host =>
        Enumerable.Range(0, host.Audited.Length)
            .Select(channel => new PlantPlace(channel, null, 0, host.Recording.DurationS, [.. host.CleanTrials(channel, reason)]))
            .Where(place => place.Trials.Count > 0);

    /// <summary>The tasks of each channel.</summary>
    /// <param name="reason">The reason.</param>
    public static Func<PlantHost, IEnumerable<PlantPlace>> InTasks(string reason) => host =>
        from channel in Enumerable.Range(0, host.Audited.Length)
        from trial in host.CleanTrials(channel, reason)
        where host.Result.Channels[channel].Cells[trial].Measures.Any(measure => measure.Value is { Measure: "contraction_snr", Value: not null })
        select new PlantPlace(channel, null, (double)host.Trials[trial].WindowFromS, (double)host.Trials[trial].WindowToS, [trial]);

    /// <summary>Stretches of one to three minutes of two channels that gel could join, either way round; a trial counts when it lies inside and both channels are clean.</summary>
    /// <param name="reason">The reason.</param>
    public static Func<PlantHost, IEnumerable<PlantPlace>> InPairs(string reason) => host =>
    {
        double length = Math.Min(host.Recording.DurationS, Math.Clamp(host.Recording.DurationS / PartOfRecording, ShortestJointS, LongestJointS));
        int stretches = (int)Math.Max(1, Math.Floor(host.Recording.DurationS / length));
        return from pair in host.Pairs()
               where AreAlike(host, pair.A, pair.B)
               from i in Enumerable.Range(0, stretches)
               from isOpposite in EitherWay
               let place = new PlantPlace(pair.A, pair.B, i * length, (i + 1) * length, [.. Inside(host, pair, i * length, (i + 1) * length, reason)]) { IsOpposite = isOpposite }
               where place.Trials.Count > 0
               select place;
    };

    private static IEnumerable<int> Inside(PlantHost host, (int A, int B) pair, double fromS, double toS, string reason) => host.CleanTrials(pair.A, reason)
        .Where(trial => host.IsClean(pair.B, trial, reason) && (double)host.Trials[trial].WindowFromS >= fromS && (double)host.Trials[trial].WindowToS <= toS);

    private static bool AreAlike(PlantHost host, int a, int b) => host.Audited[a].Rate.Equals(host.Audited[b].Rate)
        && host.Audited[a].Stretches.SequenceEqual(host.Audited[b].Stretches) && host.Audited[a].IsMicrovolts == host.Audited[b].IsMicrovolts;
}
