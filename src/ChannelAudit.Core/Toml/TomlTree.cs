using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace ChannelAudit.Toml;

/// <summary>Turns TOML into nodes that know their line.</summary>
/// <remarks>The parser's syntax tree is used rather than its object model, which forgets where things stood.</remarks>
internal static class TomlTree
{
    /// <summary>Parses a whole file into its root table.</summary>
    /// <param name="toml">The text.</param>
    /// <param name="fileName">For messages.</param>
    /// <exception cref="ChannelAuditException">When it is not TOML, or a key or table is given twice.</exception>
    public static TomlNode Parse(string toml, string fileName)
    {
        DocumentSyntax document = ParseSyntax(toml, fileName, validate: false);
        var builder = new TomlTreeBuilder(fileName);
        foreach (KeyValueSyntax entry in document.KeyValues)
        {
            builder.Add(builder.Root, entry);
        }

        foreach (TableSyntaxBase table in document.Tables)
        {
            TomlNode target = builder.Open(table);
            foreach (KeyValueSyntax entry in table.Items)
            {
                builder.Add(target, entry);
            }
        }

        // The builder words the usual faults; whatever else the standard forbids is found here.
        ParseSyntax(toml, fileName, validate: true);
        return builder.Root;
    }

    private static DocumentSyntax ParseSyntax(string toml, string fileName, bool validate)
    {
        try
        {
            DocumentSyntax document = SyntaxParser.Parse(toml, fileName, validate);
            DiagnosticMessage? fault = document.Diagnostics.FirstOrDefault(message => message.Kind == DiagnosticMessageKind.Error);
            return fault is null ? document : throw TomlErrors.Syntax(fileName, fault.Span.Start.Line + 1, LineOf(toml, fault.Span.Start.Line));
        }
        catch (TomlException)
        {
            throw TomlErrors.TooDeep(fileName);
        }
        catch (ArgumentOutOfRangeException)
        {
            // The lexer of the parser does so where a text ends behind a backslash in a string, and only there.
            int last = toml.Count(character => character == '\n');
            throw TomlErrors.Syntax(fileName, last + 1, LineOf(toml, last));
        }
    }

    private static string LineOf(string toml, int index) => toml.Split('\n').ElementAtOrDefault(index)?.Trim() ?? string.Empty;
}
