using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>The keys of <c>[trials]</c> that say how a trigger channel is read.</summary>
internal static class TriggerKeys
{
    private static readonly ImmutableArray<string> Names = ["trigger_channel", "trigger_edge", "trigger_mask", "trigger_codes", "trigger_least_ms"];
    private static readonly ImmutableArray<string> Edges = ["rising", "falling", "both", "held"];

    /// <summary>Reads them.</summary>
    /// <exception cref="ChannelAuditException">When one cannot be, or trials come from elsewhere, so that it would do nothing.</exception>
    public static TriggerSetup Read(TomlSection section)
    {
        if (Names.FirstOrDefault(name => section.Find(name) is not null) is { } given
            && !string.Equals(section.Text("from"), "trigger", StringComparison.Ordinal))
        {
            throw ProtocolErrors.NotFromTrigger(section, given);
        }

        return new TriggerSetup
        {
            Channel = section.Text("trigger_channel"),
            Edge = Edge(section),
            Mask = section.Whole("trigger_mask"),
            Codes = Codes(section),
            LeastMs = section.Exact("trigger_least_ms"),
        };
    }

    private static TriggerEdge Edge(TomlSection section) => section.Text("trigger_edge") switch
    {
        null or "rising" => TriggerEdge.Rising,
        "falling" => TriggerEdge.Falling,
        "both" => TriggerEdge.Both,
        "held" => TriggerEdge.Held,
        { } other => throw SetupErrors.NotAmong(section, "trigger_edge", other, Edges),
    };

    private static ImmutableSortedDictionary<long, string> Codes(TomlSection section)
    {
        ImmutableSortedDictionary<long, string>.Builder codes = ImmutableSortedDictionary.CreateBuilder<long, string>();
        foreach ((string name, TomlNode label) in section.Entries("trigger_codes"))
        {
            if (!long.TryParse(name, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long code))
            {
                throw ProtocolErrors.NotACode(section, label.Line, name);
            }

            if (!codes.TryAdd(code, section.TextIn("trigger_codes", label)))
            {
                throw ProtocolErrors.CodeTwice(section, label.Line, code);
            }
        }

        return codes.ToImmutable();
    }
}
