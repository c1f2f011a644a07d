using ChannelAudit.Text;
using ChannelAudit.Toml;

namespace ChannelAudit.Setup;

/// <summary>Every message about a protocol, and about how a trigger channel is to be read.</summary>
internal static class ProtocolErrors
{
    /// <summary>A key that would do nothing.</summary>
    public static ChannelAuditException NotFromTrigger(TomlSection section, string key) => section.Fault(
        key, $"{key} is given, but trials do not come from a trigger channel", "write from = \"trigger\" too, or take it out");

    /// <summary>A code that is no whole number.</summary>
    public static ChannelAuditException NotACode(TomlSection section, int line, string code) => TomlErrors.At(
        section.FileName, line, $"trigger_codes: '{OneLine.Of(code)}' is no whole number",
        "write each code in decimal digits and its label, as in trigger_codes = { 1 = \"rest\", 2 = \"angry\" }");

    /// <summary>One code written in two ways.</summary>
    public static ChannelAuditException CodeTwice(TomlSection section, int line, long code) => TomlErrors.At(
        section.FileName, line, FormattableString.Invariant($"trigger_codes: code {code} is given twice"), "give each code one label");

    /// <summary>Not exactly two ends.</summary>
    public static ChannelAuditException NotARange(TomlSection section, string key, int line, int found) => TomlErrors.At(
        section.FileName, line, FormattableString.Invariant($"{key} needs two numbers, {found} given"), $"write {key} = [least, greatest] in s");

    /// <summary>The greatest before the least.</summary>
    public static ChannelAuditException RangeTurned(TomlSection section, string key, int line, decimal from, decimal to) => TomlErrors.At(
        section.FileName, line, FormattableString.Invariant($"{key} = [{from}, {to}] has the greater number first"), $"write {key} = [least, greatest] in s");

    /// <summary>A label that the protocol does not list.</summary>
    public static ChannelAuditException UnknownLabel(TomlSection section, string key, int line, string label, IReadOnlyList<string> known) => TomlErrors.At(
        section.FileName, line, $"{key} names '{OneLine.Of(label)}', which is not among the trials of the protocol",
        TomlErrors.DidYouMean(label, known, "labels there"));

    /// <summary>An order without anything listed.</summary>
    public static ChannelAuditException NothingListed(TomlSection section) => section.Fault(
        "order", "order = \"as-listed\", but no trials are listed", "list them, as in trials = { angry = 10, happy = 10 }");

    /// <summary>An order of nothing.</summary>
    public static ChannelAuditException EmptyOrder(TomlSection section) => section.Fault(
        "order", "order is an empty list", "list the labels in order, or write order = \"any\"");

    /// <summary>An order that, repeated, gives other numbers.</summary>
    public static ChannelAuditException OrderDoesNotGoInto(TomlSection section, ExpectedTrials one) => section.Fault(
        "order", FormattableString.Invariant($"the order, repeated, does not give {one.Count} trials of '{OneLine.Of(one.Label)}'"),
        "list the labels of one round, or of the whole session, so that the numbers under trials come out");

    /// <summary>More trials than any session has.</summary>
    public static ChannelAuditException TooManyTrials(TomlSection section, int most) => section.Fault(
        "trials", FormattableString.Invariant($"more than {most} trials in all"), "give the numbers of one session");
}
