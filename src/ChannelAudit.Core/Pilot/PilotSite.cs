using System.Collections.Immutable;
using ChannelAudit.Findings;
using ChannelAudit.Impedance;
using ChannelAudit.Setup;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Pilot;

/// <summary>One site as the technician needs it.</summary>
public sealed record PilotSite
{
    /// <summary>The site's name, or the channel's label without a setup.</summary>
    public required string Name { get; init; }

    /// <summary>What the setup says of it; null without a setup.</summary>
    public SiteSetup? Setup { get; init; }

    /// <summary>Whether it lies at the eyelid, where skin is not gone back to for a doubtful gain.</summary>
    public bool IsAtEyelid { get; init; }

    /// <summary>The channel's verdict; a trial that did not pass counts as questionable at most, since a pilot has few of them.</summary>
    public required Grade Verdict { get; init; }

    /// <summary>Whether anything about it could be judged; a verdict means nothing otherwise.</summary>
    public required bool IsAssessed { get; init; }

    /// <summary>What is wrong with it, worst first.</summary>
    public ImmutableArray<SiteReason> Reasons { get; init; } = [];

    /// <summary>What could not be judged.</summary>
    public ImmutableArray<NotAssessed> NotAssessed { get; init; } = [];

    /// <summary>How its muscle answered its task; null when the setup names none.</summary>
    public TaskResponse? Task { get; init; }

    /// <summary>Amplitude at rest in µV rms within the band; null when not known.</summary>
    public double? RestUv { get; init; }

    /// <summary>Mains and harmonics over the whole recording in µV rms; null when not known.</summary>
    public double? LineUv { get; init; }

    /// <summary>How many times larger a contraction may become than the largest seen before the amplifier is at its end; null when no rail is known.</summary>
    public double? RoomTimes { get; init; }

    /// <summary>The sites that it is joined with, certainly or by suspicion.</summary>
    public ImmutableArray<PilotJoint> Joints { get; init; } = [];

    /// <summary>The impedance readings of the site; null when none were given.</summary>
    public SiteImpedance? Readings { get; init; }

    /// <summary>The first contraction that was asked of it, with a second before and after; null without one.</summary>
    public TaskTrace? Trace { get; init; }

    /// <summary>Whether something that matters could not be judged: a pass is then one as far as could be checked.</summary>
    public bool HasOpenQuestions => !NotAssessed.IsEmpty || Task is null or { Decibels: null };

    /// <summary>How bad a reason is here; pass when it is not found.</summary>
    public Grade GradeOf(string code) =>
        Reasons.FirstOrDefault(reason => string.Equals(reason.Code, code, StringComparison.Ordinal))?.Grade ?? Grade.Pass;
}
