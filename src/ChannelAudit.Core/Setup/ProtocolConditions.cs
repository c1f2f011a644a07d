using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>The conditions that a protocol expects: its labels that are neither rest nor a task.</summary>
internal static class ProtocolConditions
{
    /// <summary>The labels, in the order of the protocol; empty without one.</summary>
    public static ImmutableArray<string> Of(StudySetup setup)
    {
        HashSet<string> roles = new(setup.Trials.Rest.Concat(setup.Sites.Select(site => site.Task).OfType<string>()).Select(label => label.Trim()), StringComparer.Ordinal);
        return [.. (setup.Protocol?.Trials ?? []).Select(one => one.Label).Where(label => !roles.Contains(label)).Distinct(StringComparer.Ordinal)];
    }
}
