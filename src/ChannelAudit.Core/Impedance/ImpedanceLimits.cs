namespace ChannelAudit.Impedance;

/// <summary>Every limit that readings are held against, each with its source.</summary>
/// <remarks>
/// CP: common practice, usual in the trade without a source to quote. EJ: engineering judgement of this project, tried on the nodal
/// model of its simulated electrodes. They are for small electrodes on prepared facial skin; meters that read with another
/// frequency show other values, so a table should come from one meter.
/// </remarks>
public static class ImpedanceLimits
{
    /// <summary>Below this a reading is good, in kΩ; the limit itself is <see cref="ImpedanceGrade.Wait"/> (CP).</summary>
    public const double GoodBelowKohm = 5;

    /// <summary>Above this a contact has to be made again, in kΩ; the limit itself is <see cref="ImpedanceGrade.Wait"/> (CP).</summary>
    public const double RedoAboveKohm = 20;

    /// <summary>How far magnitudes may miss the sum of two contacts, as a share: phases differ (EJ).</summary>
    public const double Tolerance = 0.2;

    /// <summary>Up to here a reading may be too good to be true, in kΩ (EJ).</summary>
    public const double TooLowKohm = 1;

    /// <summary>A reading that low counts as a joint when both others of the site are more than this many times as high (EJ on the nodal model).</summary>
    public const double JointRatio = 3;

    /// <summary>
    /// A reading across two sites below this share of its two contacts is a joint: gel of R beside contacts of Z reads R/(R + Z) of their
    /// sum, so that one half is R = Z (nodal model).
    /// </summary>
    public const double AcrossShare = 0.5;

    /// <summary>The two electrodes of a site may differ by this, in kΩ (EJ).</summary>
    public const double ImbalanceKohm = 5;

    /// <summary>Or one may be this many times the other (EJ).</summary>
    public const double ImbalanceRatio = 3;

    /// <summary>The ground solved at different sites may differ by this share of the least (EJ on the nodal model).</summary>
    public const double GroundSpread = 0.3;

    /// <summary>A reading that becomes this many times another one of the same pair, or that part of it, has drifted (EJ).</summary>
    public const double DriftRatio = 2;

    /// <summary>Differences up to this do not count, in kΩ: a meter shows steps of 0.1 and magnitudes add up only roughly (EJ).</summary>
    public const double SmallDifferenceKohm = 1;

    /// <summary>The same for the ground, which is solved from three readings, in kΩ (EJ).</summary>
    public const double SmallGroundDifferenceKohm = 0.5;

    /// <summary>From here on a number is no contact on skin in kΩ but most likely one in Ω (EJ); refused, never rescaled.</summary>
    public const double ImplausibleKohm = 1000;

    /// <summary>When no reading of a table is below this, in kΩ, the unit is doubted (EJ).</summary>
    public const double DoubtfulUnitKohm = 100;

    /// <summary>
    /// Minutes until it is worth measuring again (CP). Contacts fell by 13.2 % within 10 minutes and by 9.0 % more until minute 15, eight
    /// people, EMG electrodes ("Long-Term Electrode-Skin Impedance Variation", Sensors 2023): sooner there is little to see.
    /// </summary>
    public const int WaitMinutes = 5;

    /// <summary>Minutes after which waiting has shown what it can (same source: 15 minutes).</summary>
    public const double LongestWaitMinutes = 15;

    /// <summary>Readings further apart than this, in minutes, are not solved together: contacts change meanwhile (same source: 13.2 % in 10 minutes).</summary>
    public const double TogetherMinutes = 10;

    /// <summary>The grade of one reading.</summary>
    /// <param name="kohm">In kΩ, 0 or more.</param>
    public static ImpedanceGrade GradeOf(double kohm) =>
        kohm < GoodBelowKohm ? ImpedanceGrade.Good : kohm <= RedoAboveKohm ? ImpedanceGrade.Wait : ImpedanceGrade.Redo;
}
