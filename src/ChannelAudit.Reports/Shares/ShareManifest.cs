using System.Collections.Immutable;
using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Reports.Shares;

/// <summary>What a share says of itself: <c>share.json</c>.</summary>
/// <param name="Version">Of the program that made it.</param>
/// <param name="Plan">What it is a part of; places of recordings are those below their root.</param>
/// <param name="Inputs">The files that the run was made with.</param>
/// <param name="Done">Its recordings: id, and from what each was made.</param>
/// <param name="Unread">Those that could not be read.</param>
internal sealed record ShareManifest(
    string Version, SharePlan Plan, ImmutableArray<RunInput> Inputs, ImmutableArray<(string Id, string InputsSha256)> Done, ImmutableArray<UnreadRecording> Unread)
{
    /// <summary>The name of the file.</summary>
    public const string FileName = OutputFolder.ShareFile;

    /// <summary>What must be the same in all shares of a run: the first that is not, in words; null when it is one run.</summary>
    /// <param name="other">Another share.</param>
    public string? DifferenceFrom(ShareManifest other) => true switch
    {
        _ when !string.Equals(Version, other.Version, StringComparison.Ordinal) => $"version {Version} here, {other.Version} there",
        _ when Plan.Share.Of != other.Plan.Share.Of => $"share {Plan.Share} here, {other.Plan.Share} there",
        _ when !string.Equals(Plan.Figures, other.Plan.Figures, StringComparison.Ordinal) || Plan.IsAlone != other.Plan.IsAlone => $"--figures {Plan.Figures} here, {other.Plan.Figures} there",
        _ when !Inputs.Select(Key).SequenceEqual(other.Inputs.Select(Key)) => "setup, criteria, events or impedance readings are not the same files",
        _ when !Plan.All.Select(Key).SequenceEqual(other.Plan.All.Select(Key)) => "the recordings found are not the same",
        _ => null,
    };

    private static (string, string, string) Key(RunInput input) => (input.Role, input.FileName, input.Sha256);

    private static (string, string) Key(RecordingEntry entry) => (entry.Id, entry.RelativePath);
}
