using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Figures.Ribbon;

/// <summary>What all rows of one ribbon share, so that they can be compared.</summary>
internal sealed class RibbonPlan
{
    private const int MostLanes = 3;

    public RibbonPlan(RecordingResult recording, RibbonScale scale, TimeAxis axis, float rowHeight)
    {
        Recording = recording;
        Scale = scale;
        Axis = axis;
        RowHeight = rowHeight;
        Tracks = TrialTracks.Of(recording.Trials);
        AreTracksCrowded = TrialTracks.AreCrowded(recording.Trials, Tracks);
        TrackCount = Tracks.IsEmpty ? 1 : Tracks.Max() + 1;
        Lanes = IsTall ? Math.Min(MostLanes, recording.Channels.Select(channel => StretchLanes.CountFor(channel)).DefaultIfEmpty(0).Max()) : 0;
        float letter = TextMeasure.Width("M", scale.Letter);
        HasRunLetters = IsTall && TrackCount == 1 && recording.Trials.Any(trial => axis.X((double)trial.WindowToS) - axis.X((double)trial.WindowFromS) < letter + 4);
    }

    public RecordingResult Recording { get; }

    public RibbonScale Scale { get; }

    public TimeAxis Axis { get; }

    public float RowHeight { get; }

    /// <summary>Whether rows have room for several lines of text.</summary>
    public bool IsTall => RowHeight >= Scale.TallRow;

    /// <summary>The track of each trial.</summary>
    public ImmutableArray<int> Tracks { get; }

    /// <summary>Whether blocks cover each other, so that nothing may be written into them.</summary>
    public bool AreTracksCrowded { get; }

    public int TrackCount { get; }

    /// <summary>Lanes for stretches above the blocks.</summary>
    public int Lanes { get; }

    /// <summary>Whether letters stand above the blocks because some blocks are too narrow to hold one.</summary>
    public bool HasRunLetters { get; }

    public float LaneHeight => TextMeasure.LineHeight(Scale.Letter) + 2;

    public float FootHeight => IsTall ? Math.Max(6, 10 * Scale.Unit) : 3;

    /// <summary>The findings of a channel that hold over a stretch rather than in one trial; one that counts trials only where none says more.</summary>
    public static IEnumerable<Finding> Stretches(ChannelResult channel)
    {
        Finding[] stretches =
            [.. channel.Findings.Where(finding => finding.Trial is null && finding.Grade > Grade.Pass && !FigureText.IsShareOfTrials(finding))];
        return stretches.Where(finding => !ReasonPhrase.IsShareOfTrials(finding)
            || stretches.All(other => ReasonPhrase.IsShareOfTrials(other) || !string.Equals(other.Reason, finding.Reason, StringComparison.Ordinal)));
    }
}
