using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Rules;

/// <summary>Mains pickup.</summary>
internal sealed class LineNoiseRule : PeakRule
{
    public LineNoiseRule(ChannelSurvey channel, AuditCriteria criteria)
        : base(channel, criteria.For(ReasonCode.LineNoise), segment => channel.Segments.Line[segment])
    {
    }

    protected override string RmsMeasure => "line_rms";

    protected override string RatioMeasure => "line_ratio";

    protected override bool MustAgree => false;

    protected override PeakReading? ReadingOf(WindowReading reading) => reading.Line;

    protected override PeakReading ReadingAt(WindowReading reading, double hz) => reading.Line ?? default;

    protected override string Words(double rms, double? ratioDb, double hz) =>
        $"{Say.Hertz(Channel.Frame.NominalHz)} mains {Say.Number(rms)} µV"
        + (ratioDb is { } ratio ? $" ({(ratio < 0 ? "-" : "+")}{Say.Number(Math.Abs(ratio))} dB against the muscle)" : string.Empty);

    protected override string CauseOf(double hz) =>
        GroundJoint.AddTo("unequal or high contact impedance of this pair, a loose lead, a poor ground, or mains equipment close by", Channel);
}
