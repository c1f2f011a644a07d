using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;
using ChannelAudit.Views;

namespace ChannelAudit.Pilot;

/// <summary>Puts together what is known of each site.</summary>
internal static class PilotSites
{
    private const int TraceColumns = 600;
    private const decimal AroundS = 1;

    /// <summary>The sites in file order.</summary>
    public static ImmutableArray<PilotSite> Of(
        Recording recording,
        ImmutableArray<(Channel Channel, string Name)> channels,
        RecordingResult result,
        StudySetup setup,
        ImmutableArray<PilotJoint> joints,
        ImpedanceReport? readings) =>
        [.. channels.Select((one, i) => Of(recording, one.Channel, result, result.Channels[i], setup, joints, readings))];

    private static PilotSite Of(
        Recording recording,
        Channel channel,
        RecordingResult result,
        ChannelResult judged,
        StudySetup setup,
        ImmutableArray<PilotJoint> joints,
        ImpedanceReport? readings)
    {
        SiteSetup? site = setup.Sites.FirstOrDefault(site => string.Equals(site.Name, judged.Name, StringComparison.Ordinal));
        ImmutableArray<PilotJoint> own = [.. joints.Where(joint => joint.Has(judged.Name))];
        ImmutableArray<SiteReason> reasons = Settled(SiteReasons.Of(judged, result.DurationS), own);
        return new PilotSite
        {
            Name = judged.Name,
            Setup = site,
            IsAtEyelid = Eyelid.Is(site is null ? channel.Label : site.Muscle ?? site.Name),
            Verdict = reasons.Select(reason => reason.Grade).Append(Grade.Pass).Max(),
            IsAssessed = judged.Measures.Any(measure => measure.Value.Value is not null),
            Reasons = reasons,
            NotAssessed = judged.NotAssessed,
            Task = TaskResponses.Of(result, judged, site),
            RestUv = channel.IsMicrovolts ? judged.Measures.ValueOf("rest_rms") : null,
            LineUv = channel.IsMicrovolts ? judged.Measures.ValueOf("line_rms") : null,
            RoomTimes = judged.Measures.ValueOf("peak_use") is { } use and > 0 ? 100 / use : null,
            Joints = own,
            Readings = readings?.Sites.FirstOrDefault(one => string.Equals(one.Name, judged.Name, StringComparison.Ordinal)),
            Trace = TraceOf(recording, channel, result, site),
        };
    }

    // Taps settle what resting data leave open: a suspicion falls, or becomes certain.
    private static ImmutableArray<SiteReason> Settled(ImmutableArray<SiteReason> reasons, ImmutableArray<PilotJoint> joints)
    {
        ImmutableArray<SiteReason> others = [.. reasons.Where(reason => !string.Equals(reason.Code, ReasonCode.Bridge, StringComparison.Ordinal))];
        if (joints.FirstOrDefault(joint => joint.IsCertain) is { } certain)
        {
            string taps = $"taps on the lead wires of {certain.One} and {certain.Other} show in both";
            SiteReason bridge = reasons.Except(others).FirstOrDefault() ?? new SiteReason(ReasonCode.Bridge, Grade.Reject, InTrialsOnly: false, taps, taps);
            return [bridge with { Grade = Grade.Reject, InTrialsOnly = false }, .. others];
        }

        return !joints.IsEmpty && joints.All(joint => joint.IsSettledApart) ? others : reasons;
    }

    private static TaskTrace? TraceOf(Recording recording, Channel channel, RecordingResult result, SiteSetup? site)
    {
        Trial? asked = result.Trials.FirstOrDefault(trial =>
            trial.Role == TrialRole.Task && string.Equals(trial.Label, site?.Task?.Trim(), StringComparison.Ordinal));
        if (asked is null)
        {
            return null;
        }

        long from = Math.Max(0, channel.Rate.IndexAt(asked.OnsetS - AroundS));
        long to = Math.Min(channel.TimelineLength, channel.Rate.IndexAt(asked.OnsetS + asked.DurationS + AroundS));
        TraceBuilder builder = new(from, to, TraceColumns);
        double sum = 0;
        long count = 0;
        foreach (Stretch stretch in channel.Stretches.Where(stretch => stretch.Start < to && stretch.End > from))
        {
            long first = Math.Max(from, stretch.Start);
            double[] samples = new double[Math.Min(to, stretch.End) - first];
            recording.Samples.Read(channel.Index, stretch.StoredStart + (first - stretch.Start), samples);
            builder.Add(samples, first);
            sum += samples.Sum();
            count += samples.Length;
        }

        if (count == 0)
        {
            return null;
        }

        Trace raw = builder.Finish(channel.Rate.Value);
        double mean = sum / count;
        Trace centred = raw with { Least = [.. raw.Least.Select(value => value - mean)], Greatest = [.. raw.Greatest.Select(value => value - mean)] };
        return new TaskTrace(centred, (double)asked.OnsetS, (double)(asked.OnsetS + asked.DurationS));
    }
}
