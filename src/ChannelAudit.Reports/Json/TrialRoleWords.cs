using ChannelAudit.Segments;

namespace ChannelAudit.Reports.Json;

/// <summary>The words for what a muscle was asked to do.</summary>
internal static class TrialRoleWords
{
    /// <summary>The word of a role.</summary>
    public static string Of(TrialRole role) => role switch
    {
        TrialRole.Scored => "scored",
        TrialRole.Rest => "rest",
        _ => "task",
    };

    /// <summary>The role of a word, or null when the word is none.</summary>
    public static TrialRole? From(string word) => word switch
    {
        "scored" => TrialRole.Scored,
        "rest" => TrialRole.Rest,
        "task" => TrialRole.Task,
        _ => null,
    };
}
