using ChannelAudit.Impedance;

namespace ChannelAudit.Reports.Wording;

/// <summary>The word and the shape of a grade of readings: never colour alone. Hollow shapes, since filled ones are verdicts of signals.</summary>
public static class ImpedanceGradeWords
{
    /// <summary>The word for a missing grade, in tables of people; files write <c>n/a</c>.</summary>
    public const string NotAvailable = "not read";

    /// <summary>A ring for good, a triangle for wait, a diamond for doubtful, a square for redo, a dash where nothing was read.</summary>
    public static string Shape(ImpedanceGrade? grade) => grade switch
    {
        ImpedanceGrade.Good => "\u25CB",
        ImpedanceGrade.Wait => "\u25B3",
        ImpedanceGrade.Doubtful => "\u25C7",
        ImpedanceGrade.Redo => "\u25A1",
        _ => "-",
    };

    /// <summary>The shape for terminals that know only ASCII.</summary>
    public static string AsciiShape(ImpedanceGrade? grade) => grade switch
    {
        ImpedanceGrade.Good => "o",
        ImpedanceGrade.Wait => "^",
        ImpedanceGrade.Doubtful => "?",
        ImpedanceGrade.Redo => "#",
        _ => "-",
    };

    /// <summary>The word.</summary>
    public static string Word(ImpedanceGrade? grade) => grade is { } known ? ImpedanceCodes.Of(known) : NotAvailable;

    /// <summary>Sorts by urgency: the higher, the sooner somebody must act. Not read comes before good, since nobody knows.</summary>
    public static int Urgency(ImpedanceGrade? grade) => grade switch
    {
        ImpedanceGrade.Good => 0,
        null => 1,
        ImpedanceGrade.Wait => 2,
        ImpedanceGrade.Doubtful => 3,
        _ => 4,
    };
}
