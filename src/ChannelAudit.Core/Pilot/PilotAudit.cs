using System.Collections.Immutable;
using ChannelAudit.Criteria;
using ChannelAudit.Impedance;
using ChannelAudit.Recordings;
using ChannelAudit.Results;
using ChannelAudit.Runs;
using ChannelAudit.Segments;
using ChannelAudit.Setup;

namespace ChannelAudit.Pilot;

/// <summary>From a pilot recording to what the technician needs: the audit, taps on lead wires, the traces of the tasks, and what to do next.</summary>
public static class PilotAudit
{
    // A window may end half a sample behind the last one.
    private const double SlackS = 0.001;

    /// <summary>Audits a pilot recording.</summary>
    /// <param name="entry">The file and its id.</param>
    /// <param name="setup">What was where.</param>
    /// <param name="criteria">Limits in force.</param>
    /// <param name="eventsFile">An events table given by name, or null.</param>
    /// <param name="impedance">Impedance readings, or null; they change no verdict.</param>
    /// <param name="cancellation">Checked for every block of samples.</param>
    /// <param name="isGrowing">Whether the recording is still being written: a trial that runs past its end has not ended yet.</param>
    /// <exception cref="ChannelAuditException">When the file cannot be read, or setup or events do not fit it.</exception>
    public static PilotReport Of(
        RecordingEntry entry,
        StudySetup setup,
        AuditCriteria criteria,
        string? eventsFile,
        ImpedanceLog? impedance,
        CancellationToken cancellation,
        bool isGrowing = false)
    {
        using PreparedRecording prepared = PreparedRecording.Open(entry, setup, eventsFile, isGrowing);
        ImmutableArray<(Channel Channel, string Name)> channels = AuditedChannels.Of(prepared.Recording, prepared.Setup);
        ImpedanceReport? readings = prepared.Readings(impedance);
        TapEvents taps = TapEvents.Of(prepared.Events.Events, [.. channels.Select(channel => channel.Name)]);
        (AuditInput input, ImmutableArray<Trial> cut) = WithoutCut(prepared, criteria);
        decimal? end = EndBeforeTaps(taps, input.Trials);
        RecordingResult result = BeforeTaps(prepared.Recording, input, end, cancellation) with { Impedance = readings };
        TapReport? tapped = taps.Taps.IsEmpty ? null : new TapReader(prepared.Recording, channels, result.Mains.Hz).Read(taps.Taps);
        ImmutableArray<PilotJoint> joints = PilotJoints.Of(result, tapped, new Contacts(readings));
        PilotMaterial seen = new()
        {
            Recording = result,
            Setup = prepared.Setup,
            Sites = PilotSites.Of(prepared.Recording, channels, result, prepared.Setup, joints, readings),
            Taps = taps,
            Tapped = tapped,
            EndS = end,
            Cut = isGrowing ? [] : cut,
            ReadingsOfOthers = impedance is { NamesRecordings: true } log && !log.Recordings.Contains(entry.Id, StringComparer.Ordinal) ? log.Recordings : [],
        };
        return Answered(seen, joints) with { MarksLateS = TaskMarks.LateS(prepared.Recording, channels, result, prepared.Setup, cancellation) };
    }

    private static PilotReport Answered(PilotMaterial seen, ImmutableArray<PilotJoint> joints)
    {
        RecordingResult result = seen.Recording;
        return new PilotReport
        {
            Recording = result,
            Answer = PilotAnswers.Of(seen.Sites, joints, result.Impedance, result.DurationS),
            Sites = seen.Sites,
            Joints = joints,
            Next = NextSteps.Of(seen.Sites, joints, result.Impedance, result.DurationS),
            NotChecked = NotChecked.Of(seen),
            Taps = seen.Tapped,
        };
    }

    // A pilot is stopped by hand: a trial that had not ended by then is none, and no sample of it is missing.
    private static (AuditInput Input, ImmutableArray<Trial> Cut) WithoutCut(PreparedRecording prepared, AuditCriteria criteria)
    {
        AuditInput input = prepared.Input(criteria, withViews: false);
        ImmutableArray<Trial> cut = [.. input.Trials.Where(trial => (double)trial.WindowToS > prepared.Recording.DurationS + SlackS)];
        return (input with { Trials = [.. input.Trials.Except(cut)] }, cut);
    }

    // Taps disturb on purpose: they come last, and the audit ends before them.
    private static RecordingResult BeforeTaps(Recording recording, AuditInput input, decimal? endS, CancellationToken cancellation)
    {
        using Recording? before = endS is { } seconds ? RecordingCut.Before(recording, seconds) : null;
        return Audit.Of(before ?? recording, endS is { } s ? input with { Trials = [.. input.Trials.Where(trial => trial.OnsetS < s)] } : input, cancellation);
    }

    private static decimal? EndBeforeTaps(TapEvents taps, ImmutableArray<Trial> trials)
    {
        if (taps.Taps.IsEmpty)
        {
            return null;
        }

        decimal first = taps.Taps.Min(tap => tap.FromS);
        return first > 0 && trials.All(trial => trial.OnsetS < first || IsTap(trial)) ? first : null;
    }

    private static bool IsTap(Trial trial) => trial.Label?.StartsWith(TapEvents.Word, StringComparison.OrdinalIgnoreCase) == true;
}
