using System.Collections.Immutable;

namespace ChannelAudit.Impedance;

/// <summary>What the readings say about one site.</summary>
public sealed record SiteImpedance
{
    /// <summary>The site's name.</summary>
    public required string Name { get; init; }

    /// <summary>Ids of its two electrodes, first and second; empty when the setup names none.</summary>
    public ImmutableArray<string> Electrodes { get; init; } = [];

    /// <summary>The three pairs <c>a-b</c>, <c>a-ground</c>, <c>b-ground</c>, in this order, whether read or not.</summary>
    public required ImmutableArray<PairImpedance> Pairs { get; init; }

    /// <summary>
    /// What each contact takes part with, in kΩ; null when a reading is missing or the three are not of one moment. Where
    /// <see cref="Warnings"/> cast doubt, the values are no contact's own.
    /// </summary>
    public SolvedImpedance? Solved { get; init; }

    /// <summary>Warnings that are about this site, the most urgent first.</summary>
    public ImmutableArray<ImpedanceWarning> Warnings { get; init; } = [];

    /// <summary>The first electrode as people call it here: its id, or <c>a</c>.</summary>
    public string NameOfA => Electrodes.Length == 2 ? Electrodes[0] : "a";

    /// <summary>The second one: its id, or <c>b</c>.</summary>
    public string NameOfB => Electrodes.Length == 2 ? Electrodes[1] : "b";

    /// <summary>Whether its readings cannot be taken at their word.</summary>
    public bool IsDoubted => Warnings.Any(warning => warning.CastsDoubt);

    /// <summary>Whether every pair has a reading.</summary>
    public bool IsComplete => Pairs.All(pair => pair.Grade is not null);

    /// <summary>
    /// The worst of its pairs and of its warnings; null, not available, when a pair has no reading and what is there is good. It never changes a signal's
    /// verdict, and <see cref="ImpedanceGrade.Good"/> never excuses a bad signal.
    /// </summary>
    public ImpedanceGrade? Grade
    {
        get
        {
            ImpedanceGrade worst = Pairs.Max(pair => pair.Grade) ?? ImpedanceGrade.Good;
            if (worst < ImpedanceGrade.Doubtful && IsDoubted)
            {
                worst = ImpedanceGrade.Doubtful;
            }

            return worst == ImpedanceGrade.Good && !IsComplete ? null : worst;
        }
    }

    /// <summary>The pair's latest reading.</summary>
    /// <param name="pair">One of the three.</param>
    public PairImpedance this[ImpedancePair pair] => Pairs[(int)pair];
}
