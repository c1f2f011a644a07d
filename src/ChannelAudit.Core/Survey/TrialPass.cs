using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Segments;

namespace ChannelAudit.Survey;

/// <summary>Measures windows of time on all channels and pairs of a surveyed recording.</summary>
public sealed class TrialPass
{
    /// <summary>Pairs are compared in windows of this many seconds and more.</summary>
    public const double LeastPairSeconds = 2;

    private readonly RecordingSurvey survey;
    private readonly ImmutableArray<GroupPass> passes;
    private readonly ImmutableArray<WindowReader> readers;

    /// <summary>Prepares the pass.</summary>
    public TrialPass(Recording recording, RecordingSurvey survey)
    {
        this.survey = survey;
        passes = GroupPass.All(recording, survey);
        Spill densities = new();
        readers =
        [
            .. survey.Channels.Select(channel => new WindowReader(
                recording,
                channel.Channel,
                channel.Frame,
                channel.Time,
                channel.Flat,
                channel.Pops,
                ChannelSurveyor.HistogramOf(channel.Channel, channel.Time),
                densities)),
        ];
    }

    /// <summary>Measures a span of time.</summary>
    /// <param name="fromS">Start in seconds.</param>
    /// <param name="toS">End in seconds.</param>
    /// <param name="cancellation">Checked often.</param>
    public TrialReadings Read(decimal fromS, decimal toS, CancellationToken cancellation)
    {
        WindowReading[] windows = new WindowReading[readers.Length];
        PairReading?[] pairs = new PairReading?[survey.Pairs.Length];
        bool isLongEnough = (double)(toS - fromS) >= LeastPairSeconds;
        foreach (GroupPass pass in passes)
        {
            if (!pass.IsGroup && !isLongEnough)
            {
                continue;
            }

            pass.Read(fromS, toS, cancellation);
            if (pass.IsGroup)
            {
                ReadWindows(pass, windows, fromS, toS, cancellation);
            }

            if (isLongEnough)
            {
                pass.CopyPairs(pairs);
            }
        }

        return new TrialReadings([.. windows], [.. pairs]);
    }

    private void ReadWindows(GroupPass pass, WindowReading[] windows, decimal fromS, decimal toS, CancellationToken cancellation)
    {
        for (int member = 0; member < pass.Members.Length; member++)
        {
            int i = pass.Members[member];
            Window window = Window.Between(survey.Channels[i].Channel, fromS, toS);
            windows[i] = readers[i].Read(window, pass.Spectrum(member), cancellation);
        }
    }
}
