using System.Text;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Text;
using ChannelAudit.Trends;

namespace ChannelAudit.Reports.Trends;

/// <summary>One person's set-ups beside the lab's usual range, in words that judge nobody.</summary>
public static class OwnWords
{
    /// <summary>What it is and is not.</summary>
    public const string Meaning =
        "What it shows is how recordings came out, not why: participants, electrodes and rooms differ. It compares no two persons and names no cause.";

    /// <summary>The heading.</summary>
    public static string Title(OwnSetups own) => $"Set-ups of {OneLine.Of(own.Technician)} beside the lab's usual range";

    /// <summary>A measure in a line.</summary>
    public static string Line(OwnMeasure measure) => measure.IsShare
        ? $"{TrendWords.Percent(measure.Own)} ({Interval(measure.OwnInterval!.Value)}) of {Quantities.Many(measure.OwnValues, "channel")}; the lab's others {TrendWords.Percent(measure.Usual)}"
        : $"{measure.Inside.Plain()} of {measure.OwnValues.Plain()} inside the usual {TrendWords.Value(measure.Measure, measure.Low)} to {TrendWords.Value(measure.Measure, measure.High)}; in the middle {TrendWords.Value(measure.Measure, measure.Own)}, the lab's others {TrendWords.Value(measure.Measure, measure.Usual)}";

    /// <summary>The whole as text.</summary>
    public static string Text(OwnSetups own)
    {
        StringBuilder text = new($"{Title(own)}:\n");
        if (own.NotAssessed is { } cause)
        {
            return text.Append($"  not assessed: {cause}\n").ToString();
        }

        foreach (OwnMeasure measure in own.Measures)
        {
            text.Append($"  {TrendWords.Name(measure.Measure)}: {Line(measure)}\n");
        }

        return text.Append($"  {Meaning}\n").ToString();
    }

    private static string Interval((double Low, double High) ends) => $"95 % interval {TrendWords.Percent(ends.Low)} to {TrendWords.Percent(ends.High)}";
}
