namespace ChannelAudit.Results;

/// <summary>The mains frequency used for line noise.</summary>
/// <param name="NominalHz">50 or 60, or the setup's.</param>
/// <param name="Hz">The frequency used, refined in the data where a peak was clear.</param>
/// <param name="Origin">How it was found, in words.</param>
public sealed record MainsResult(double NominalHz, double Hz, string Origin)
{
    /// <summary>How <see cref="Origin"/> begins where the setup states the frequency.</summary>
    internal const string Stated = "stated by the setup";

    /// <summary>What <see cref="Origin"/> goes on with where the data did not say.</summary>
    internal const string NotSeen = "; no ";

    /// <summary>Whether neither the setup nor a clear peak in the data speaks for it.</summary>
    public bool IsGuess => Origin.Contains(NotSeen, StringComparison.Ordinal) && !Origin.StartsWith(Stated, StringComparison.Ordinal);
}
