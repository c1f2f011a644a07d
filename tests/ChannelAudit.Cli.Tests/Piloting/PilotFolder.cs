using ChannelAudit.Synthesis;
using ChannelAudit.Synthesis.Faults;
using ChannelAudit.TestKit;

namespace ChannelAudit.Cli.Tests.Piloting;

/// <summary>A folder with a made pilot recording and its setup.</summary>
internal sealed class PilotFolder : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    /// <summary>The setup file.</summary>
    public string Setup => _folder.In("setup.toml");

    /// <summary>The output folder.</summary>
    public string Out => _folder.In("out");

    /// <summary>Rest, each muscle alone, rest.</summary>
    public static SessionPlan Plan(ulong seed) => new Protocol { ScoredTrials = 0, RestS = 10, TaskS = 4, PauseS = 2 }.Plan(seed);

    /// <summary>The same with cheek and eye joined.</summary>
    public static SessionPlan Bridged(ulong seed) => Plan(seed) with { Faults = [ElectrodeBridge.TwoNodes("cheek", "eye", 0.5)] };

    /// <summary>Writes a recording and the setup that fits it.</summary>
    /// <returns>The recording's path.</returns>
    public string Record(string name, SessionPlan plan)
    {
        string file = _folder.In(name);
        EdfFiles.Write(MadeRecording.Make(plan), file);
        File.WriteAllText(Setup, SetupText.Of(plan));
        return file;
    }

    /// <summary>Writes a file.</summary>
    public string Write(string name, string text) => _folder.Write(name, text);

    /// <summary>The text of an output.</summary>
    public string Read(string name) => File.ReadAllText(Path.Combine(Out, name));

    /// <inheritdoc/>
    public void Dispose() => _folder.Dispose();
}
