using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Rules;

/// <summary>A steady narrow peak that is not mains.</summary>
internal sealed class NarrowBandRule : PeakRule
{
    public NarrowBandRule(ChannelSurvey channel, AuditCriteria criteria, bool behind)
        : base(channel, criteria.For(ReasonCode.NarrowBand), behind, "narrow", segment => channel.Segments.Narrow[segment], segment => channel.Segments.NarrowLeft[segment])
    {
    }

    protected override bool MustAgree => true;

    protected override PeakReading? ReadingOf(WindowReading reading, bool behind) => behind ? reading.Left?.Narrow : reading.Narrow;

    protected override PeakReading ReadingAt(WindowReading reading, double hz) => reading.HasDensity
        ? NarrowPeak.AtHz(reading.Density, Channel.Frame, reading.Segments, hz, Behind ? Channel.Frame.Passes : [])
        : new PeakReading(double.PositiveInfinity, 0, hz);

    // The strongest that is left may be another than the strongest of all.
    protected override PeakReading RawBehind(WindowReading reading, PeakCase found) => reading.HasDensity
        ? NarrowPeak.AtHz(reading.Density, Channel.Frame, reading.Segments, found.Left.Hz)
        : found.Raw;

    protected override double MuscleOf(PeakReading reading, double emgPower) => NarrowPeak.MuscleBeside(reading, emgPower, Channel.Frame);

    protected override string Words(double raw, double left, double? ratioDb, double hz) => $"steady {Say.Hertz(hz)} tone {Amplitude(raw, left)}";

    protected override string CauseOf(double hz) => "a display, a lamp, a strobe, a stimulator or a switched supply close by";
}
