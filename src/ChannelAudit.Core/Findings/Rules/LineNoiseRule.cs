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

    /// <summary>Whether a finding says what a notch would leave.</summary>
    public bool SaysRescue { get; init; } = true;

    protected override bool MustAgree => false;

    protected override PeakReading? ReadingOf(WindowReading reading, bool behind) => behind ? reading.Left?.Line : reading.Line;

    protected override PeakReading ReadingAt(WindowReading reading, double hz) => ReadingOf(reading, Behind) ?? default;

    protected override string Words(double raw, double left, double? ratioDb, double hz) =>
        $"{Say.Hertz(Channel.Frame.NominalHz)} mains {Amplitude(raw, left)}"
        + (ratioDb is { } ratio ? $" ({(ratio < 0 ? "-" : "+")}{Say.Number(Math.Abs(ratio))} dB against the muscle)" : string.Empty);

    protected override string CauseOf(double hz) =>
        GroundJoint.AddTo("unequal or high contact impedance of this pair, a loose lead, a poor ground, or mains equipment close by", Channel);

    /// <summary>What a notch at the mains frequency alone would leave: the harmonics stay. Only of a trial is said what that would mean.</summary>
    protected override string Rescue(WindowCase window, PeakCase found, Grade grade)
    {
        SpectralFrame frame = Channel.Frame;
        if (!SaysRescue || Behind || !window.Reading.HasDensity || frame.Harmonics.IsEmpty || frame.Harmonics[0].Harmonic != 1)
        {
            return string.Empty;
        }

        double[] passes = new double[frame.Bins];
        Array.Fill(passes, 1);
        int center = frame.Harmonics[0].Center;
        passes.AsSpan(center - LineWindow.Reach, LineWindow.Width).Clear();
        PeakReading left = LineNoise.Of(window.Reading.Density, frame, window.Reading.Segments, passes);
        Grade then = Judge(window, found with { Raw = left, EffectPercent = EffectOf(window.Reading, passes) }).Grade;
        if (then >= grade)
        {
            return string.Empty;
        }

        // The whole recording is a mean of its trials; and beside an active trial the quiet stretches speak on.
        then = Worse(then, window.IsActive ? InheritedGrade(window.Reading) : Grade.Pass);
        string would = $"; a notch at {Say.Hertz(frame.NominalHz)} would leave {Say.Number(left.Rms)} µV";
        return window.IsWhole || then >= grade
            ? would
            : $"{would}: {Say.Then(then)} (notch_hz under [scoring], if you score so), but it takes muscle away too";
    }

    private static Grade Worse(Grade one, Grade other) => one > other ? one : other;

    /// <summary>What the mains behind another notch would still add to the score, in %.</summary>
    private double? EffectOf(WindowReading reading, double[] notch)
    {
        SpectralFrame frame = Channel.Frame;
        double[] shares = [.. frame.Passes.Zip(notch, (share, passes) => share * passes)];
        double[] densities = reading.Density;
        double total = shares.Zip(densities, (share, density) => share * density).Skip(1).Sum() * frame.BinHz;
        return ScoreShift.OfAddedPower(LineNoise.Of(densities, frame, reading.Segments, shares).Power, total);
    }
}
