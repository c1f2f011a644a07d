using System.Collections.Immutable;
using ChannelAudit.Recordings;
using ChannelAudit.Text;

namespace ChannelAudit.Setup;

/// <summary>Patterns of a setup that fit no recording of a run: what they say is not applied, and nobody would see why.</summary>
public static class UnfitPatterns
{
    private const int Named = 2;

    /// <summary>A warning for all <c>[[recordings]]</c> patterns that fit none, and one for a <c>[participants]</c> pattern that leaves recordings without a participant.</summary>
    /// <param name="setup">The setup of the run.</param>
    /// <param name="paths">Paths of the recordings below the given root, with <c>/</c>.</param>
    public static ImmutableArray<Warning> Of(StudySetup setup, IReadOnlyList<string> paths)
    {
        ArgumentNullException.ThrowIfNull(setup);
        if (paths.Count == 0 || setup.FileName is not { } file)
        {
            return [];
        }

        string example = OneLine.Of(paths[0]);
        List<Warning> warnings = [];
        string[] unfit = [.. setup.Overrides.SelectMany(one => one.Match).Where(pattern => !paths.Any(pattern.Fits)).Select(pattern => $"'{OneLine.Of(pattern.Text)}'")];
        if (unfit.Length > 0)
        {
            warnings.Add(new Warning(
                file,
                "[[recordings]]",
                $"match {Listed(unfit)} {(unfit.Length == 1 ? "fits" : "fit")} no recording of this run, whose paths are like '{example}': nothing is applied"));
        }

        string[] nobody = setup.ParticipantPath is { } path ? [.. paths.Where(one => !path.Fits(one) && Person.Of(setup, one, _ => null).Participant is null)] : [];
        if (nobody.Length > 0)
        {
            warnings.Add(new Warning(
                file,
                "[participants]",
                FormattableString.Invariant($"path '{OneLine.Of(setup.ParticipantPath!.Text)}' fits {paths.Count - nobody.Length} of {paths.Count} recordings; whose '{OneLine.Of(nobody[0])}' is, is not known")));
        }

        return [.. warnings];
    }

    private static string Listed(string[] patterns) => patterns.Length <= Named
        ? string.Join(" and ", patterns)
        : FormattableString.Invariant($"{string.Join(", ", patterns.Take(Named))} and {patterns.Length - Named} more");
}
