using ChannelAudit.Results;

namespace ChannelAudit.Recordings.Edf;

/// <summary>What a signal can be used for, and the scale its samples get.</summary>
/// <param name="NotAudited">Why it is not audited, or null.</param>
/// <param name="IsMicrovolts">Whether its samples are microvolts.</param>
/// <param name="Scale">From codes to values.</param>
/// <param name="Rails">The values of the digital limits, lower first; null when they mean nothing.</param>
internal sealed record SignalUse(string? NotAudited, bool IsMicrovolts, SampleScale Scale, (double Lower, double Upper)? Rails)
{
    private const string RawCodes = "none";

    /// <summary>Decides for a signal.</summary>
    /// <param name="signal">What the header says.</param>
    /// <param name="unitWhenBlank">The unit that the setup states for signals without one, or null.</param>
    /// <exception cref="ChannelAuditException">When the setup's unit is unknown.</exception>
    public static SignalUse Of(EdfSignalHeader signal, string? unitWhenBlank)
    {
        bool isRaw = string.Equals(unitWhenBlank, RawCodes, StringComparison.OrdinalIgnoreCase);
        if (unitWhenBlank is not null && !isRaw && VoltageUnit.Microvolts(unitWhenBlank) is null)
        {
            throw EdfErrors.UnknownUnit(unitWhenBlank);
        }

        if (NoSignal(signal) is string cause)
        {
            return Unscaled(cause);
        }

        bool isBlank = signal.Unit.Length == 0;
        if (isBlank && isRaw)
        {
            return Codes(signal);
        }

        string unit = isBlank ? unitWhenBlank ?? string.Empty : signal.Unit;
        double? microvolts = VoltageUnit.Microvolts(unit);
        if (SampleScale.Physical(signal, microvolts ?? 1) is not SampleScale scale)
        {
            return Unscaled(NoCalibration(signal));
        }

        (double Lower, double Upper) rails = RailsOf(scale, signal);
        if (Math.Max(-rails.Lower, rails.Upper) > RecordingBounds.MostValue)
        {
            return Unscaled(FormattableString.Invariant($"not calibrated: a physical limit of {Math.Max(-rails.Lower, rails.Upper):G3} \u00B5V is no voltage"));
        }

        if (microvolts is not null)
        {
            return new SignalUse(null, IsMicrovolts: true, scale, rails);
        }

        string notAudited = unit.Length == 0 ? "not calibrated: no unit" : $"unit '{unit}' is not a voltage";
        return new SignalUse(notAudited, IsMicrovolts: false, scale, rails);
    }

    private static string? NoSignal(EdfSignalHeader signal) => signal switch
    {
        { IsAnnotations: true } => SkippedChannel.Annotations,
        { SamplesPerRecord: 0 } => "no samples",
        _ when SignalLabel.IsStatus(signal.Label) => "status or trigger signal",
        _ => null,
    };

    private static string NoCalibration(EdfSignalHeader signal) => signal switch
    {
        { DigitalMin: null } or { DigitalMax: null } => "not calibrated: a digital limit is not a number",
        { PhysicalMin: null } or { PhysicalMax: null } => "not calibrated: a physical limit is not a number",
        _ when signal.DigitalMin == signal.DigitalMax => "not calibrated: digital minimum and maximum are equal",
        _ => "not calibrated: physical minimum and maximum are equal",
    };

    private static SignalUse Unscaled(string cause) => new(cause, IsMicrovolts: false, SampleScale.Codes, null);

    private static SignalUse Codes(EdfSignalHeader signal) => signal.DigitalMin is null || signal.DigitalMax is null || signal.DigitalMin == signal.DigitalMax
        ? Unscaled(NoCalibration(signal))
        : new SignalUse(null, IsMicrovolts: false, SampleScale.Codes, RailsOf(SampleScale.Codes, signal));

    private static (double Lower, double Upper) RailsOf(SampleScale scale, EdfSignalHeader signal)
    {
        double a = scale.ValueOf(signal.DigitalMin.GetValueOrDefault());
        double b = scale.ValueOf(signal.DigitalMax.GetValueOrDefault());
        return (Math.Min(a, b), Math.Max(a, b));
    }
}
