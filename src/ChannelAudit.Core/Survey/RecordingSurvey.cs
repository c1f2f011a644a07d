using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit.Survey;

/// <summary>What a whole recording shows, before any trial is looked at and without any limit.</summary>
public sealed class RecordingSurvey
{
    private readonly Dictionary<(int A, int B), int> places;

    private RecordingSurvey(MainsResult mains, ImmutableArray<ChannelSurvey> channels, ImmutableArray<PairSurvey> pairs)
    {
        Mains = mains;
        Channels = channels;
        Pairs = pairs;
        places = pairs.Select((pair, i) => (pair, i)).ToDictionary(one => (one.pair.A, one.pair.B), one => one.i);
    }

    /// <summary>The mains frequency.</summary>
    public MainsResult Mains { get; }

    /// <summary>One entry an audited channel, in file order.</summary>
    public ImmutableArray<ChannelSurvey> Channels { get; }

    /// <summary>One entry a pair of audited channels, first before second; of many channels adjacent ones only, where the setup names any.</summary>
    public ImmutableArray<PairSurvey> Pairs { get; }

    /// <summary>The position of a pair in <see cref="Pairs"/>; -1 where the two are not compared.</summary>
    /// <param name="a">Position of the first channel.</param>
    /// <param name="b">Position of the second channel, behind the first.</param>
    /// <exception cref="ArgumentOutOfRangeException">When there are no such channels, or the second does not stand behind the first.</exception>
    public int IndexOfPair(int a, int b)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(a);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(b, a);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(b, Channels.Length);
        return places.GetValueOrDefault((a, b), -1);
    }

    /// <summary>Surveys a recording.</summary>
    /// <param name="recording">The recording.</param>
    /// <param name="channels">Its audited channels and their names.</param>
    /// <param name="trials">The trials; only "rest" is looked at.</param>
    /// <param name="setup">May state the mains frequency, and what lies at which site.</param>
    /// <param name="cancellation">Checked often.</param>
    public static RecordingSurvey Of(
        Recording recording,
        ImmutableArray<(Channel Channel, string Name)> channels,
        ImmutableArray<Trial> trials,
        StudySetup setup,
        CancellationToken cancellation)
    {
        RecordingFrames prepared = RecordingFrames.Of(recording, channels, setup, cancellation);
        channels = prepared.Channels;
        ImmutableArray<Channel> all = [.. channels.Select(pair => pair.Channel)];
        (ImmutableArray<SpectrumSample> sample, MainsResult mains, ImmutableArray<SpectralFrame> frames) = (prepared.Samples, prepared.Mains, prepared.Frames);
        ChannelSurvey[] surveys = new ChannelSurvey[all.Length];
        List<PairSurvey> pairs = [];
        ImmutableArray<ChannelGroup> groups = ChannelGroup.Of(all);
        Func<int, int, bool>? isCompared = ComparedPairs.Of([.. channels.Select(pair => pair.Name)], setup);
        foreach (ChannelGroup group in groups)
        {
            ImmutableArray<Channel> members = [.. group.Members.Select(i => all[i])];
            GroupSurvey? spectra = null;
            ImmutableArray<ChannelScan> scans = [];
            SideBySide.Run(
                recording,
                reader => scans = ChannelScan.Of(reader, members, cancellation),
                reader => spectra = GroupSurvey.Of(reader, members, [.. group.Members.Select(i => frames[i])], true, cancellation, Inside(group, isCompared)));
            ImmutableArray<ChannelSurvey> ofGroup = ChannelSurveyor.Survey(
                recording,
                [.. group.Members.Select(i => channels[i])],
                [.. group.Members.Select(i => frames[i])],
                spectra!,
                scans,
                trials,
                setup,
                cancellation);
            for (int member = 0; member < members.Length; member++)
            {
                int place = group.Members[member];
                surveys[place] = ofGroup[member] with
                {
                    FilterDoubts = FilterCheck.Of(all[place], sample[place], mains, ofGroup[member].All.Time.Baseline),
                    Signal = SignalSummary.Of(all[place], sample[place], ofGroup[member]),
                };
            }

            pairs.AddRange(PairSurvey.Inside(group, spectra!, surveys));
        }

        pairs.AddRange(PairSurvey.Across(recording, groups, surveys, isCompared, trials, cancellation));
        return new RecordingSurvey(mains, [.. surveys], [.. pairs.OrderBy(pair => pair.A).ThenBy(pair => pair.B)]);
    }

    private static Func<int, int, bool>? Inside(ChannelGroup group, Func<int, int, bool>? isCompared) =>
        isCompared is null ? null : (a, b) => isCompared(group.Members[a], group.Members[b]);
}
