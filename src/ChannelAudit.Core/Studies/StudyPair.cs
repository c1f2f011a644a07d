namespace ChannelAudit.Studies;

/// <summary>Two channels that share something.</summary>
/// <param name="A">The first name, by ordinal order.</param>
/// <param name="B">The second.</param>
/// <param name="Sign">1 or -1: the sign of what they share.</param>
internal readonly record struct StudyPair(string A, string B, int Sign)
{
    /// <summary>Correlation from which on the sign means something.</summary>
    public const double LeastRho = 0.1;
}
