using System.Buffers;
using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace ChannelAudit.Toml;

/// <summary>Turns TOML into nodes that know their line.</summary>
/// <remarks>The parser's syntax tree is used rather than its object model, which forgets where things stood.</remarks>
internal static class TomlTree
{
    private const int MostDepth = 64;

    // The specification permits no other control characters than tabs and line ends, anywhere.
    private static readonly SearchValues<char> Forbidden =
        SearchValues.Create([.. Enumerable.Range(0, 128).Select(code => (char)code).Where(character => char.IsControl(character) && character is not ('\t' or '\n' or '\r'))]);

    private static readonly TomlSerializerOptions Options = new() { MaxDepth = MostDepth };

    /// <summary>Parses a whole file into its root table.</summary>
    /// <param name="toml">The text.</param>
    /// <param name="fileName">For messages.</param>
    /// <exception cref="ChannelAuditException">When it is not TOML, or a key or table is given twice.</exception>
    public static TomlNode Parse(string toml, string fileName)
    {
        RefuseFirstFault(toml, fileName);
        DocumentSyntax document = ParseSyntax(toml, fileName);
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

        // The builder words the usual faults; whatever else the standard forbids the parser has noted.
        DiagnosticMessage? fault = document.Diagnostics.FirstOrDefault(message => message.Kind == DiagnosticMessageKind.Error);
        return fault is null ? builder.Root : throw TomlErrors.Syntax(fileName, fault.Span.Start.Line + 1, LineOf(toml, fault.Span.Start.Line));
    }

    // Before the tree is made, which keeps a record of every fault: a picture or a recording given for a setup has one in nearly every byte.
    private static void RefuseFirstFault(string toml, string fileName)
    {
        int control = toml.AsSpan().IndexOfAny(Forbidden);
        if (control >= 0)
        {
            int before = toml.AsSpan(0, control).Count('\n');
            throw TomlErrors.Syntax(fileName, before + 1, LineOf(toml, before));
        }

        var parser = TomlParser.Create(toml, new TomlParserOptions { Mode = TomlParserMode.Strict }, Options);
        try
        {
            while (parser.MoveNext())
            {
            }
        }
        catch (TomlException fault) when (parser.Depth <= MostDepth && fault.Line is { } line)
        {
            throw TomlErrors.Syntax(fileName, line, LineOf(toml, line - 1));
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

    private static DocumentSyntax ParseSyntax(string toml, string fileName)
    {
        try
        {
            return SyntaxParser.Parse(toml, Options, fileName, validate: true);
        }
        catch (TomlException)
        {
            throw TomlErrors.TooDeep(fileName);
        }
    }

    private static string LineOf(string toml, int index) => toml.Split('\n').ElementAtOrDefault(index)?.Trim() ?? string.Empty;
}
