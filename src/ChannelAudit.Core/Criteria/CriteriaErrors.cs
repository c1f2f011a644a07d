using ChannelAudit.Measures;
using ChannelAudit.Text;
using ChannelAudit.Toml;

namespace ChannelAudit.Criteria;

/// <summary>Every message about criteria beyond what holds for any TOML file.</summary>
internal static class CriteriaErrors
{
    /// <summary>A table that is no reason code with limits.</summary>
    public static ChannelAuditException UnknownReason(string file, int line, string name, IReadOnlyList<string> known) => TomlErrors.At(
        file, line, $"[{OneLine.Of(name)}] is no reason code with limits", TomlErrors.DidYouMean(name, known, "tables"));

    /// <summary>A list of limits that this reason does not have.</summary>
    public static ChannelAuditException LevelWithoutUse(TomlSection section, string key, string reason, IEnumerable<string> keys) => section.Fault(
        key, $"{key} has no use in [{reason}]", $"[{reason}] has {string.Join(" and ", keys)}");

    /// <summary>Limits that are not a list of tables.</summary>
    public static ChannelAuditException NotAListOfTables(TomlSection section, string key, string example) => section.Fault(
        key, $"{key} must be a list of tables", $"for example {key} = [{{ {example} }}], or [] to switch it off");

    /// <summary>A record of a freeze that lacks something.</summary>
    public static ChannelAuditException NotInRecord(TomlSection section, string key) => TomlErrors.At(
        section.FileName, section.Line, $"{section.Name} has no {key}", "freeze the limits again with criteria freeze, or take the table out: the limits then count as not frozen");

    /// <summary>An alternative without a limit.</summary>
    public static ChannelAuditException EmptyAlternative(TomlSection section, string key) => section.Fault(
        key, $"{key} has an empty alternative {{}}, which would always be reached", $"write {key} = [] to switch it off");

    /// <summary>A name that is no measure.</summary>
    public static ChannelAuditException UnknownMeasure(TomlSection section, int line, string name, IReadOnlyList<string> known) => TomlErrors.At(
        section.FileName, line, $"unknown measure '{OneLine.Of(name)}' in {section.Name}",
        TomlErrors.DidYouMean(name, known, $"measures of {section.Name}"));

    /// <summary>A measure that belongs to another reason.</summary>
    public static ChannelAuditException ForeignMeasure(TomlSection section, int line, string name, IReadOnlyList<string> known) => TomlErrors.At(
        section.FileName, line, $"measure '{name}' does not serve {section.Name}", $"measures of {section.Name}: {OneLine.List(known)}");

    /// <summary>A limit that is not a number.</summary>
    public static ChannelAuditException NotANumber(TomlSection section, TomlNode node, string measure) => TomlErrors.At(
        section.FileName, node.Line, $"the limit of {measure} must be a number, not {node.KindInWords}", $"for example {{ {measure} = 1.0 }}");

    /// <summary>A limit that is always or never reached.</summary>
    public static ChannelAuditException SenselessLimit(TomlSection section, TomlNode node, MeasureDefinition measure) => TomlErrors.At(
        section.FileName, node.Line, $"{measure.Name} = {OneLine.Of(node.Text)} makes no sense as a limit",
        $"a limit of {measure.Name} is {LimitRange.InWords(measure)}; [] switches a list off");

    /// <summary>A reject limit milder than the questionable one.</summary>
    public static ChannelAuditException WrongOrder(TomlSection section, string rejectKey, (Limit Questionable, Limit Reject) fault) => section.Fault(
        section.Find(rejectKey) is null ? rejectKey.Replace("reject", "questionable", StringComparison.Ordinal) : rejectKey,
        $"limits of {fault.Reject.Measure} in the wrong order: {rejectKey} at {OneLine.Number(fault.Reject.Value)}, "
            + $"questionable at {OneLine.Number(fault.Questionable.Value)}",
        MeasureCatalog.Get(fault.Reject.Measure).Sense == LimitSense.AtMost
            ? "the reject limit must be the lower one, or the same; a list left out keeps its default"
            : "the reject limit must be the higher one, or the same; a list left out keeps its default");
}
