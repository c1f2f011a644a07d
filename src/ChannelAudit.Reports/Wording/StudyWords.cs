using System.Collections.Immutable;
using ChannelAudit.Studies;

namespace ChannelAudit.Reports.Wording;

/// <summary>Words for recordings that are other than the rest of their study.</summary>
internal static class StudyWords
{
    private const int Shown = 6;

    /// <summary>What stands above the list.</summary>
    public const string Title = "Other than the rest of the study";

    /// <summary>What the list is and is not.</summary>
    public const string Apart = "Changes no verdict. What each rests on, and what it cannot see: docs/study.md.";

    /// <summary>A kind in words.</summary>
    public static string Kind(string kind) => kind switch
    {
        OddKind.SameFile => "same file",
        OddKind.SameSignal => "same signal",
        OddKind.SameEvents => "same events",
        OddKind.Length => "length",
        OddKind.Rate => "sampling rate",
        OddKind.Unit => "unit",
        OddKind.Gain => "gain",
        OddKind.FilterStated => "stated filter",
        OddKind.FilterMeasured => "measured filter",
        OddKind.Channels => "channels",
        OddKind.ChannelOrder => "order of channels",
        OddKind.Polarity => "polarity",
        _ => kind,
    };

    /// <summary>The first recordings, and how many more there are.</summary>
    public static string Recordings(ImmutableArray<string> ids) => ids.Length <= Shown
        ? string.Join(", ", ids)
        : $"{string.Join(", ", ids.Take(Shown))} and {(ids.Length - Shown).Plain()} more";
}
