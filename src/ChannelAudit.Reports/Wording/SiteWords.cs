using System.Globalization;
using ChannelAudit.Impedance;
using ChannelAudit.Pilot;

namespace ChannelAudit.Reports.Wording;

/// <summary>The numbers of a site in a pilot, as short as a column.</summary>
public static class SiteWords
{
    private const string None = "-";

    /// <summary>The answer to its own task: <c>+18 dB</c>, and which other site answers more.</summary>
    public static string Task(PilotSite site) => site.Task switch
    {
        null => "not asked",
        { Times: 0 } => "not recorded",
        { Decibels: null } => "not known",
        { AnswersMost: false, Strongest: { } other } task => $"{Decibels(task.Decibels!.Value)}, {other} more",
        var task => Decibels(task.Decibels!.Value),
    };

    /// <summary>A ratio in dB with its sign; the floor means that no answer was seen.</summary>
    public static string Decibels(double decibels) => decibels <= Measures.ContractionSnr.FloorDb
        ? "no answer"
        : string.Create(CultureInfo.InvariantCulture, $"{decibels:+0;-0;0} dB");

    /// <summary>A level in µV.</summary>
    public static string Level(double? microvolts) => microvolts is { } value ? string.Create(CultureInfo.InvariantCulture, $"{value:G2} \u00B5V") : None;

    /// <summary>How much larger a contraction may become: <c>12 x</c>.</summary>
    public static string Room(PilotSite site)
    {
        const double plenty = 100;
        const double wholeFrom = 10;
        return site.RoomTimes is not { } times ? "not known"
            : times >= plenty ? "over 100 x"
            : times.ToString(times < wholeFrom ? "0.0" : "0", CultureInfo.InvariantCulture) + " x";
    }

    /// <summary>The reading between the two electrodes, as on the face, and the grade of all three: <c>4.8 kΩ good</c>.</summary>
    public static string Contact(PilotSite site) => site.Readings is not { } read || read.Pairs.All(pair => pair.Kohm is null)
        ? None
        : $"{(read[ImpedancePair.AToB].Kohm is { } kohm ? ImpedanceWords.Kohm(kohm) : "no a to b")}, {(read.Grade is { } grade ? ImpedanceCodes.Of(grade) : "incomplete")}";
}
