using System.Collections.Immutable;
using ChannelAudit.Setup;

namespace ChannelAudit.Pilot;

/// <summary>A pilot recording of under a minute that leaves no joint in doubt: rest, each muscle alone, then light taps on the lead wires.</summary>
/// <param name="Parts">What to do, one after the other.</param>
/// <param name="WithoutTask">Sites whose muscle cannot be asked, since the setup names no task.</param>
public sealed record PilotProtocol(ImmutableArray<ProtocolPart> Parts, ImmutableArray<string> WithoutTask)
{
    private const int MostS = 59;

    /// <summary>Its length in seconds.</summary>
    public int DurationS => Parts.IsEmpty ? 0 : Parts[^1].AtS + Parts[^1].ForS;

    /// <summary>The protocol of a setup.</summary>
    /// <param name="setup">Names sites, tasks and the label of rest.</param>
    public static PilotProtocol Of(StudySetup setup)
    {
        ArgumentNullException.ThrowIfNull(setup);
        SiteSetup[] asked = [.. setup.Sites.Where(site => site.Task is not null)];
        ProtocolPace pace = ProtocolPace.For(asked.Length, setup.Sites.Length, MostS);
        ImmutableArray<ProtocolPart>.Builder parts = ImmutableArray.CreateBuilder<ProtocolPart>();
        int at = 0;
        Add(ProtocolPartKind.Rest, null, setup.Trials.Rest.IsEmpty ? "rest" : setup.Trials.Rest[0].Trim(), ProtocolPace.RestS, 0);
        foreach (SiteSetup site in asked)
        {
            Add(ProtocolPartKind.Task, site.Name, site.Task!.Trim(), pace.TaskS, ProtocolPace.TaskLeadS);
        }

        foreach (SiteSetup site in setup.Sites)
        {
            Add(ProtocolPartKind.Taps, site.Name, TapEvents.Word + site.Name, pace.TapS, pace.TapLeadS);
        }

        return new PilotProtocol(parts.ToImmutable(), [.. setup.Sites.Where(site => site.Task is null).Select(site => site.Name)]);

        void Add(ProtocolPartKind kind, string? site, string label, int seconds, int lead)
        {
            parts.Add(new ProtocolPart(kind, site, label, at + lead, seconds, lead));
            at += lead + seconds;
        }
    }
}
