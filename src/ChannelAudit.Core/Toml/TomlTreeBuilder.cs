using Tomlyn.Syntax;

namespace ChannelAudit.Toml;

/// <summary>Puts the parts of a syntax tree where dotted keys and headers say.</summary>
/// <param name="fileName">For messages.</param>
internal sealed class TomlTreeBuilder(string fileName)
{
    /// <summary>The table that holds all others.</summary>
    public TomlNode Root { get; } = new() { Kind = TomlKind.Table, Line = 1 };

    /// <summary>The table that a header opens.</summary>
    public TomlNode Open(TableSyntaxBase header)
    {
        string[] path = Names(header.Name);
        int line = header.Span.Start.Line + 1;
        TomlNode parent = Walk(Root, path, line);
        string last = path[^1];
        bool isKnown = parent.Entries.TryGetValue(last, out TomlNode? known);
        if (header is TableArraySyntax)
        {
            return Append(parent, last, line, known);
        }

        if (!isKnown)
        {
            known = new TomlNode { Kind = TomlKind.Table, Line = line };
            parent.Entries.Add(last, known);
        }
        else if (known!.Kind != TomlKind.Table || known.HasHeader || known.IsClosed)
        {
            throw TomlErrors.Twice(fileName, line, string.Join('.', path), known.Line);
        }

        known.HasHeader = true;
        return known;
    }

    /// <summary>Adds a key and its value to a table.</summary>
    public void Add(TomlNode table, KeyValueSyntax entry)
    {
        string[] path = Names(entry.Key);
        int line = entry.Span.Start.Line + 1;
        TomlNode parent = Walk(table, path, line);
        if (parent.Entries.TryGetValue(path[^1], out TomlNode? known))
        {
            throw TomlErrors.Twice(fileName, line, string.Join('.', path), known.Line);
        }

        parent.Entries.Add(path[^1], Value(entry.Value, line));
    }

    private TomlNode Append(TomlNode parent, string name, int line, TomlNode? known)
    {
        if (known is null)
        {
            known = new TomlNode { Kind = TomlKind.List, Line = line };
            parent.Entries.Add(name, known);
        }
        else if (known.Kind != TomlKind.List || known.IsClosed)
        {
            throw TomlErrors.Twice(fileName, line, name, known.Line);
        }

        var item = new TomlNode { Kind = TomlKind.Table, Line = line, HasHeader = true };
        known.Items.Add(item);
        return item;
    }

    private TomlNode Walk(TomlNode table, string[] path, int line)
    {
        foreach (string name in path[..^1])
        {
            if (!table.Entries.TryGetValue(name, out TomlNode? next))
            {
                next = new TomlNode { Kind = TomlKind.Table, Line = line };
                table.Entries.Add(name, next);
            }

            if (next is { Kind: TomlKind.List, IsClosed: false })
            {
                next = next.Items[^1];
            }

            if (next.Kind != TomlKind.Table || next.IsClosed)
            {
                throw TomlErrors.Twice(fileName, line, name, next.Line);
            }

            table = next;
        }

        return table;
    }

    private TomlNode Value(ValueSyntax? value, int line) => value switch
    {
        StringValueSyntax text => new TomlNode { Kind = TomlKind.Text, Line = line, Text = text.Value ?? string.Empty },
        IntegerValueSyntax number => new TomlNode { Kind = TomlKind.Integer, Line = line, Text = Raw(number.Token), Number = number.Value },
        FloatValueSyntax number => new TomlNode { Kind = TomlKind.Float, Line = line, Text = Raw(number.Token), Number = number.Value },
        BooleanValueSyntax truth => new TomlNode { Kind = TomlKind.Truth, Line = line, Text = Raw(truth.Token) },
        DateTimeValueSyntax { Kind: SyntaxKind.LocalDate } date => new TomlNode { Kind = TomlKind.Date, Line = line, Text = Raw(date.Token) },
        DateTimeValueSyntax time => new TomlNode { Kind = TomlKind.Time, Line = line, Text = Raw(time.Token) },
        ArraySyntax list => List(list, line),
        InlineTableSyntax table => Inline(table, line),
        _ => throw TomlErrors.Syntax(fileName, line, string.Empty),
    };

    private TomlNode List(ArraySyntax list, int line)
    {
        var node = new TomlNode { Kind = TomlKind.List, Line = line, IsClosed = true };
        foreach (ArrayItemSyntax item in list.Items)
        {
            node.Items.Add(Value(item.Value, (item.Value?.Span.Start.Line ?? line - 1) + 1));
        }

        return node;
    }

    private TomlNode Inline(InlineTableSyntax table, int line)
    {
        // Open while it is filled, so that dotted keys may add to it; closed for whatever comes later.
        var open = new TomlNode { Kind = TomlKind.Table, Line = line };
        foreach (InlineTableItemSyntax item in table.Items)
        {
            Add(open, item.KeyValue!);
        }

        var closed = new TomlNode { Kind = TomlKind.Table, Line = line, IsClosed = true };
        foreach ((string name, TomlNode value) in open.Entries)
        {
            closed.Entries.Add(name, value);
        }

        return closed;
    }

    private static string Raw(SyntaxToken? token) => token?.Text ?? string.Empty;

    private static string[] Names(KeySyntax? key) => key is null
        ? [string.Empty]
        : [Name(key.Key), .. key.DotKeys.Select(part => Name(part.Key))];

    private static string Name(BareKeyOrStringValueSyntax? key) => key switch
    {
        BareKeySyntax bare => Raw(bare.Key),
        StringValueSyntax text => text.Value ?? string.Empty,
        _ => string.Empty,
    };
}
