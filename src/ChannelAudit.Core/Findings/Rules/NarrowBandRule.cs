using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Rules;

/// <summary>A steady narrow peak that is not mains.</summary>
internal sealed class NarrowBandRule : PeakRule
{
    public NarrowBandRule(ChannelSurvey channel, AuditCriteria criteria)
        : base(channel, criteria.For(ReasonCode.NarrowBand), segment => channel.Segments.Narrow[segment])
    {
    }

    protected override string RmsMeasure => "narrow_rms";

    protected override string RatioMeasure => "narrow_ratio";

    protected override bool MustAgree => true;

    protected override PeakReading? ReadingOf(WindowReading reading) => reading.Narrow;

    protected override PeakReading ReadingAt(WindowReading reading, double hz) => reading.Density.Length > 0
        ? NarrowPeak.AtHz(reading.Density, Channel.Frame, reading.Segments, hz)
        : new PeakReading(double.PositiveInfinity, 0, hz);

    protected override double MuscleOf(PeakReading reading, double emgPower) => NarrowPeak.MuscleBeside(reading, emgPower, Channel.Frame);

    protected override string Words(double rms, double? ratioDb, double hz) => $"steady {Say.Hertz(hz)} tone {Say.Number(rms)} µV";

    protected override string CauseOf(double hz) => "a display, a lamp, a strobe, a stimulator or a switched supply close by";
}
