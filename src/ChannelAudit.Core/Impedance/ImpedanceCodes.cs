namespace ChannelAudit.Impedance;

/// <summary>The words of tables and <c>result.json</c> for grades, pairs and warnings.</summary>
public static class ImpedanceCodes
{
    /// <summary><c>good</c>, <c>wait</c>, <c>doubtful</c> or <c>redo</c>.</summary>
    /// <param name="grade">The grade.</param>
    public static string Of(ImpedanceGrade grade) => grade switch
    {
        ImpedanceGrade.Good => "good",
        ImpedanceGrade.Wait => "wait",
        ImpedanceGrade.Doubtful => "doubtful",
        ImpedanceGrade.Redo => "redo",
        _ => throw new ArgumentOutOfRangeException(nameof(grade), grade, "no such grade"),
    };

    /// <summary><c>a-b</c>, <c>a-ground</c> or <c>b-ground</c>; a reading across sites has the names of its ends.</summary>
    /// <param name="pair">One of the three pairs of a site.</param>
    public static string Of(ImpedancePair pair) => pair switch
    {
        ImpedancePair.AToB => "a-b",
        ImpedancePair.AToGround => "a-ground",
        ImpedancePair.BToGround => "b-ground",
        _ => throw new ArgumentOutOfRangeException(nameof(pair), pair, "no pair of one site"),
    };

    /// <summary>The word of a warning, such as <c>pair-joined</c>.</summary>
    /// <param name="code">The warning.</param>
    public static string Of(ImpedanceWarningCode code) => code switch
    {
        ImpedanceWarningCode.UnitInDoubt => "unit-in-doubt",
        ImpedanceWarningCode.SitesJoined => "sites-joined",
        ImpedanceWarningCode.PairJoined => "pair-joined",
        ImpedanceWarningCode.GroundJoined => "ground-joined",
        ImpedanceWarningCode.TooLow => "too-low",
        ImpedanceWarningCode.GroundDiffers => "ground-differs",
        ImpedanceWarningCode.Inconsistent => "inconsistent",
        ImpedanceWarningCode.Drifted => "drifted",
        ImpedanceWarningCode.Imbalance => "imbalance",
        ImpedanceWarningCode.NotSettling => "not-settling",
        ImpedanceWarningCode.NotTogether => "not-together",
        ImpedanceWarningCode.Incomplete => "incomplete",
        _ => throw new ArgumentOutOfRangeException(nameof(code), code, "no such warning"),
    };

    /// <summary>The value of a word, or null when there is none.</summary>
    /// <typeparam name="T"><see cref="ImpedanceGrade"/>, <see cref="ImpedancePair"/> or <see cref="ImpedanceWarningCode"/>.</typeparam>
    /// <param name="word">The word.</param>
    /// <param name="of">One of the functions above.</param>
    public static T? From<T>(string word, Func<T, string> of)
        where T : struct, Enum
    {
        foreach (T value in Enum.GetValues<T>())
        {
            if (value is not ImpedancePair.Across && string.Equals(of(value), word, StringComparison.Ordinal))
            {
                return value;
            }
        }

        return null;
    }
}
