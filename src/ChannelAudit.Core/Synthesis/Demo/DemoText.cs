namespace ChannelAudit.Synthesis.Demo;

/// <summary>The texts of the demo's folder, kept in the program: <c>README.md</c>, <c>setup.toml</c>, <c>lab.toml</c>, <c>exclusions.tsv</c>.</summary>
public static class DemoText
{
    /// <summary>Their names.</summary>
    public const string Readme = "README.md", Setup = "setup.toml", Criteria = "lab.toml", Exclusions = "exclusions.tsv";

    /// <summary>A text.</summary>
    /// <param name="name">One of the names.</param>
    /// <exception cref="ArgumentException">When there is no such text.</exception>
    public static string Of(string name)
    {
        using Stream stream = typeof(DemoText).Assembly.GetManifestResourceStream("demo/" + name)
            ?? throw new ArgumentException($"There is no text '{name}'.", nameof(name));
        using StreamReader reader = new(stream);
        return reader.ReadToEnd();
    }
}
