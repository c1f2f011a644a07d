using System.Globalization;
using ChannelAudit.Text;

namespace ChannelAudit.Toml;

/// <summary>Every message about a TOML file that can be said without knowing what the file is for.</summary>
internal static class TomlErrors
{
    /// <summary>A fault in a line of a file.</summary>
    public static ChannelAuditException At(string file, int line, string found, string hint) => new(
        FaultKind.Usage, string.Create(CultureInfo.InvariantCulture, $"{file}, line {line}: {found}"), hint);

    /// <summary>There is no such file.</summary>
    public static ChannelAuditException NoFile(string file) => new(
        FaultKind.Usage, $"{OneLine.Of(file)}: there is no such file", "give the path of a file that exists");

    /// <summary>A folder was given where a file is needed.</summary>
    public static ChannelAuditException IsFolder(string file) => new(
        FaultKind.Usage, $"{OneLine.Of(file)}: is a folder, not a file", "give the file inside the folder");

    /// <summary>The file cannot be opened.</summary>
    public static ChannelAuditException Unreadable(string file, Exception inner) => new(
        FaultKind.Usage, $"{OneLine.Of(file)}: cannot be opened", "see that you may read it and that no other program holds it", inner);

    /// <summary>The file is far larger than any setup or criteria.</summary>
    public static ChannelAuditException TooLarge(string file) => new(
        FaultKind.Usage, $"{file}: larger than 1 MiB, so it is no TOML file of ours", "give a text file in TOML, not a recording");

    /// <summary>The file holds nothing, or would be waited for.</summary>
    public static ChannelAuditException Empty(string file) => new(
        FaultKind.Usage, $"{file}: the file is empty", "leave it out when there is nothing to say; a pipe or a device cannot be read");

    /// <summary>The file is not text.</summary>
    public static ChannelAuditException NotText(string file) => new(
        FaultKind.Usage, $"{file}: not UTF-8 text", "save it as plain text in UTF-8");

    /// <summary>The text is not TOML.</summary>
    public static ChannelAuditException Syntax(string file, int line, string content) => At(
        file, line, $"not valid TOML: {OneLine.Of(content)}",
        "write key = value, [table], text in \"quotes\", lists in [brackets], decimals with a dot");

    /// <summary>Lists within lists without end.</summary>
    public static ChannelAuditException TooDeep(string file) => new(
        FaultKind.Usage, $"{file}: lists or tables nested too deeply", "no key of ours needs more than a table in a list");

    /// <summary>A key or table is given a second time.</summary>
    public static ChannelAuditException Twice(string file, int line, string name, int first) => At(
        file, line, string.Create(CultureInfo.InvariantCulture, $"'{OneLine.Of(name)}' is given twice, first in line {first}"), "keep one of the two");

    /// <summary>A key that does not exist.</summary>
    public static ChannelAuditException UnknownKey(string file, int line, string key, string table, IReadOnlyList<string> known) => At(
        file, line, $"unknown key '{OneLine.Of(key)}' in {table}", DidYouMean(key, known, $"keys of {table}"));

    /// <summary>A value of the wrong kind.</summary>
    public static ChannelAuditException WrongKind(string file, TomlNode node, string key, string wanted, string example) => At(
        file, node.Line, $"{key} must be {wanted}, not {node.KindInWords}", $"for example {example}");

    /// <summary>A number outside of its range.</summary>
    public static ChannelAuditException OutOfRange(string file, TomlNode node, TomlKey key) => At(
        file, node.Line, $"{key.Name} = {OneLine.Of(node.Text)} is out of range",
        $"{key.Name} goes from {OneLine.Number(key.Least)} to {OneLine.Number(key.Most)}");

    /// <summary>Text that says nothing.</summary>
    public static ChannelAuditException Blank(string file, TomlNode node, TomlKey key) => At(
        file, node.Line, $"{key.Name} is blank", $"for example {key.Example}, or leave it out");

    /// <summary>Text with characters that no table could show.</summary>
    public static ChannelAuditException ControlCharacter(string file, TomlNode node, TomlKey key) => At(
        file, node.Line, $"{key.Name} has a control character in it", "write it in one line, without tabs");

    /// <summary>The hint for an unknown name: the nearest known one, or all of them.</summary>
    /// <param name="name">What was given.</param>
    /// <param name="known">What there is.</param>
    /// <param name="what">What the known names are, for the list.</param>
    public static string DidYouMean(string name, IReadOnlyList<string> known, string what) =>
        NearestName.Of(name, known) is { } nearest ? $"did you mean '{OneLine.Of(nearest)}'?" : $"{what}: {OneLine.List(known)}";
}
