namespace ChannelAudit.Signals.Statistics;

/// <summary>Agreement of two raters beyond chance, or why there is none to be had.</summary>
/// <param name="Count">Things that both have rated.</param>
/// <param name="Observed">Observed (weighted) agreement, 0 to 1; null without any thing rated.</param>
/// <param name="Expected">Agreement expected by chance from how often each gives each answer, 0 to 1; null likewise.</param>
/// <param name="Kappa">Cohen's kappa, at most 1; null when it is not defined.</param>
/// <param name="StandardError">Its large-sample standard error; null with <paramref name="Kappa"/>, and when it comes out as 0, which says nothing
/// of how sure a perfect agreement is.</param>
/// <param name="Low">Lower end of its interval, at least −1; null with <paramref name="StandardError"/>.</param>
/// <param name="High">Upper end of its interval, at most 1; null likewise.</param>
/// <param name="Undefined">Why there is no kappa, as a clause; null when there is one.</param>
public sealed record KappaResult(
    long Count, double? Observed, double? Expected, double? Kappa, double? StandardError, double? Low, double? High, string? Undefined);
