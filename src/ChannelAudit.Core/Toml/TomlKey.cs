namespace ChannelAudit.Toml;

/// <summary>A key that a table may have.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Example">How it is written, with a plausible value.</param>
/// <param name="Meaning">One line for people.</param>
/// <param name="Least">The least number allowed, where it holds numbers.</param>
/// <param name="Most">The greatest number allowed, where it holds numbers.</param>
internal sealed record TomlKey(
    string Name, string Example, string Meaning, double Least = double.NegativeInfinity, double Most = double.PositiveInfinity);
