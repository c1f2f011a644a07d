using ChannelAudit.Criteria;
using ChannelAudit.Measures;
using ChannelAudit.Survey;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>Mains pickup.</summary>
internal sealed class LineNoiseRule : PeakRule
{
    public LineNoiseRule(ChannelSurvey channel, AuditCriteria criteria, bool behind)
        : base(channel, criteria.For(ReasonCode.LineNoise), behind, "line", segment => channel.Segments.Line[segment], segment => channel.Segments.LineLeft[segment])
    {
    }

    protected override bool MustAgree => false;

    protected override PeakReading? ReadingOf(WindowReading reading, bool behind) => behind ? reading.Left?.Line : reading.Line;

    protected override PeakReading ReadingAt(WindowReading reading, double hz) => ReadingOf(reading, Behind) ?? default;

    protected override string Words(double raw, double left, double? ratioDb, double hz) =>
        $"{Say.Hertz(Channel.Frame.NominalHz)} mains {Amplitude(raw, left)}"
        + (ratioDb is { } ratio ? $" ({(ratio < 0 ? "-" : "+")}{Say.Number(Math.Abs(ratio))} dB against the muscle)" : string.Empty);

    protected override string CauseOf(double hz) =>
        GroundJoint.AddTo("unequal or high contact impedance of this pair, a loose lead, a poor ground, or mains equipment close by", Channel);

    /// <summary>What a notch at the mains frequency alone would leave: the harmonics stay.</summary>
    protected override string Rescue(WindowCase window, PeakCase found, Grade grade)
    {
        SpectralFrame frame = Channel.Frame;
        if (Behind || window.Reading.Density.Length == 0 || frame.Harmonics.IsEmpty || frame.Harmonics[0].Harmonic != 1)
        {
            return string.Empty;
        }

        double[] passes = new double[frame.Bins];
        Array.Fill(passes, 1);
        int center = frame.Harmonics[0].Center;
        passes.AsSpan(center - LineWindow.Reach, LineWindow.Width).Clear();
        PeakReading left = LineNoise.Of(window.Reading.Density, frame, window.Reading.Segments, passes);
        Grade then = Judge(window, found with { Raw = left, EffectPercent = null }).Grade;
        string hz = Say.Hertz(frame.NominalHz);
        return then < grade
            ? $"; a notch at {hz} would leave {Say.Number(left.Rms)} µV: {Say.Then(then)} (notch_hz under [scoring], if you score so), but it takes muscle away too"
            : string.Empty;
    }
}
