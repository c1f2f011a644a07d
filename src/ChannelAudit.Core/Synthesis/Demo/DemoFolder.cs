namespace ChannelAudit.Synthesis.Demo;

/// <summary>Writes the demo's study as a lab would keep it.</summary>
/// <remarks>
/// Recordings, their events and the setup lie in <c>study</c>. Impedance readings and the list of exclusions lie beside it: they are tables that a
/// search for recordings would take for text recordings.
/// </remarks>
public static class DemoFolder
{
    /// <summary>The folder of recordings below the demo's.</summary>
    public const string Study = "study";

    /// <summary>The folder of impedance readings below the demo's.</summary>
    public const string Impedance = "impedance";

    /// <summary>Makes all sessions and writes everything; files of an earlier demo are replaced.</summary>
    /// <param name="folder">Where to; made when it does not exist.</param>
    /// <exception cref="IOException">When a file cannot be written.</exception>
    public static void Write(string folder)
    {
        string study = Directory.CreateDirectory(Path.Combine(folder, Study)).FullName;
        string impedance = Directory.CreateDirectory(Path.Combine(folder, Impedance)).FullName;
        WriteText(folder, DemoText.Readme);
        WriteText(folder, DemoText.Criteria);
        WriteText(folder, DemoText.Exclusions);
        WriteText(study, DemoText.Setup);

        // Sessions share nothing, so their bytes do not depend on how many are made at once.
        Parallel.ForEach(DemoStudy.Sessions, session =>
        {
            EdfFiles.Write(MadeRecording.Make(session.Plan), Path.Combine(study, session.Code + ".edf"));
            File.WriteAllText(Path.Combine(study, session.Code + "_events.tsv"), EventsTable.Of(session.Plan));
            File.WriteAllText(Path.Combine(impedance, session.Code + ".tsv"), DemoReadings.Of(session));
        });
    }

    private static void WriteText(string folder, string name) => File.WriteAllText(Path.Combine(folder, name), DemoText.Of(name));
}
