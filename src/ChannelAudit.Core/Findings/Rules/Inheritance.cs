using ChannelAudit.Verdicts;

namespace ChannelAudit.Findings.Rules;

/// <summary>What quiet stretches say about an active trial, whose contraction hides the fault.</summary>
/// <remarks>
/// Engineering judgement (docs/measures/line-noise.md): both sides at fault, the milder of the two; one side only, questionable; at the ends
/// of a recording one side decides. Nothing is inherited when the trial's own level excludes it: its upper bound is below half of the
/// faulty side's median level.
/// </remarks>
internal static class Inheritance
{
    private const double ExcludingShare = 0.5;

    /// <summary>The inherited grade and the level that speaks for it.</summary>
    /// <param name="before">The side before, or null at the start of the recording.</param>
    /// <param name="after">The side after, or null at the end.</param>
    /// <param name="upperAt">The highest level that the trial allows at a frequency.</param>
    public static (Grade Grade, SideReading? Speaks) Of(SideReading? before, SideReading? after, Func<double, double> upperAt)
    {
        SideReading? milder = (before, after) switch
        {
            ({ } first, { } second) => first.Grade <= second.Grade ? first : second,
            _ => before ?? after,
        };
        SideReading? worse = (before, after) switch
        {
            ({ } first, { } second) => first.Grade > second.Grade ? first : second,
            _ => before ?? after,
        };
        if (worse is not { } faulty || faulty.Grade == Grade.Pass)
        {
            return (Grade.Pass, null);
        }

        SideReading speaks = milder is { Grade: not Grade.Pass } both ? both : faulty;
        Grade grade = milder!.Value.Grade == Grade.Pass ? Grade.Questionable : speaks.Grade;
        double level = milder.Value.Grade == Grade.Pass ? faulty.Rms : Math.Min(milder.Value.Rms, faulty.Rms);
        return upperAt(speaks.Hz) < ExcludingShare * level ? (Grade.Pass, null) : (grade, speaks);
    }
}
