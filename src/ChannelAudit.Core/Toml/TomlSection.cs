using System.Collections.Immutable;
using System.Globalization;
using ChannelAudit.Text;

namespace ChannelAudit.Toml;

/// <summary>A table whose keys are known: it hands out checked values, and nothing else can be in it.</summary>
internal sealed class TomlSection
{
    private readonly TomlNode _table;
    private readonly ImmutableArray<TomlKey> _keys;

    /// <summary>Opens a table.</summary>
    /// <param name="table">The table; null for one that is left out, which has no key.</param>
    /// <param name="name">As it is called in messages, with its brackets.</param>
    /// <param name="fileName">For messages.</param>
    /// <param name="keys">The keys it may have.</param>
    /// <exception cref="ChannelAuditException">When it has another key.</exception>
    public TomlSection(TomlNode? table, string name, string fileName, ImmutableArray<TomlKey> keys)
    {
        _table = table ?? new TomlNode { Kind = TomlKind.Table, Line = 1 };
        _keys = keys;
        Name = name;
        FileName = fileName;
        if (_table.Kind != TomlKind.Table)
        {
            throw TomlErrors.WrongKind(fileName, _table, name.Trim('[', ']'), "a table", name);
        }

        foreach ((string key, TomlNode value) in _table.Entries)
        {
            if (!keys.Any(known => string.Equals(known.Name, key, StringComparison.Ordinal)))
            {
                throw TomlErrors.UnknownKey(fileName, value.Line, key, name, [.. keys.Select(known => known.Name)]);
            }
        }
    }

    /// <summary>The table's name in messages.</summary>
    public string Name { get; }

    /// <summary>The file's name in messages.</summary>
    public string FileName { get; }

    /// <summary>The line of the table.</summary>
    public int Line => _table.Line;

    /// <summary>The value of a key, or null when it is left out.</summary>
    public TomlNode? Find(string key) => _table.Entries.GetValueOrDefault(key);

    /// <summary>The line of a key, or of the table when it is left out.</summary>
    public int LineOf(string key) => Find(key)?.Line ?? Line;

    /// <summary>A text without blanks around it, or null when it is left out.</summary>
    public string? Text(string key) => Find(key) is { } node ? TextOf(node, Key(key)) : null;

    /// <summary>A number within its range, or null when it is left out.</summary>
    public double? Number(string key) => Find(key) is { } node ? NumberOf(node, Key(key)) : null;

    /// <summary>A number exactly as written, or null when it is left out.</summary>
    public decimal? Exact(string key) => Find(key) is { } node ? ExactOf(node, Key(key)) : null;

    /// <summary>A whole number, or null when it is left out.</summary>
    public int? Whole(string key)
    {
        if (Find(key) is not { } node)
        {
            return null;
        }

        return node.Kind == TomlKind.Integer
            ? (int)NumberOf(node, Key(key))
            : throw TomlErrors.WrongKind(FileName, node, key, "a whole number", Key(key).Example);
    }

    /// <summary><c>true</c> or <c>false</c>, or null when it is left out.</summary>
    public bool? Truth(string key)
    {
        if (Find(key) is not { } node)
        {
            return null;
        }

        return node.Kind == TomlKind.Truth
            ? string.Equals(node.Text, "true", StringComparison.Ordinal)
            : throw TomlErrors.WrongKind(FileName, node, key, "true or false", Key(key).Example);
    }

    /// <summary>A day as <c>yyyy-MM-dd</c>, or null when it is left out.</summary>
    public string? Date(string key)
    {
        if (Find(key) is not { } node)
        {
            return null;
        }

        return node.Kind == TomlKind.Date ? node.Text : throw TomlErrors.WrongKind(FileName, node, key, "a date", Key(key).Example);
    }

    /// <summary>A list of texts, empty when it is left out.</summary>
    public ImmutableArray<string> Texts(string key) => [.. Items(key, "a list of texts").Select(item => TextOf(item, Key(key)))];

    /// <summary>A table of texts by name, empty when it is left out.</summary>
    public ImmutableDictionary<string, string> TextsByName(string key) => Find(key) switch
    {
        null => ImmutableDictionary<string, string>.Empty,
        { Kind: TomlKind.Table } table => table.Entries.ToImmutableDictionary(entry => entry.Key, entry => TextOf(entry.Value, Key(key)), StringComparer.Ordinal),
        { } other => throw TomlErrors.WrongKind(FileName, other, key, "a table of texts", Key(key).Example),
    };

    /// <summary>A list of numbers, empty when it is left out.</summary>
    public ImmutableArray<double> Numbers(string key) => [.. Items(key, "a list of numbers").Select(item => NumberOf(item, Key(key)))];

    /// <summary>A list of numbers exactly as written, empty when it is left out.</summary>
    public ImmutableArray<decimal> Exacts(string key) => [.. Items(key, "a list of numbers").Select(item => ExactOf(item, Key(key)))];

    /// <summary>The entries of a table whose names are free, in file order; empty when it is left out.</summary>
    public IEnumerable<(string Name, TomlNode Value)> Entries(string key) => Find(key) switch
    {
        null => [],
        { Kind: TomlKind.Table } table => table.Entries.Select(entry => (entry.Key, entry.Value)),
        { } other => throw TomlErrors.WrongKind(FileName, other, key, "a table", Key(key).Example),
    };

    /// <summary>The text of an entry.</summary>
    public string TextIn(string key, TomlNode value) => TextOf(value, Key(key));

    /// <summary>The whole number of an entry.</summary>
    public int WholeIn(string key, TomlNode value) => value.Kind == TomlKind.Integer
        ? (int)NumberOf(value, Key(key))
        : throw TomlErrors.WrongKind(FileName, value, key, "a whole number", Key(key).Example);

    /// <summary>The texts of an entry that is a list.</summary>
    public ImmutableArray<string> TextsIn(string key, TomlNode value) => value.Kind == TomlKind.List
        ? [.. value.Items.Select(item => TextOf(item, Key(key)))]
        : throw TomlErrors.WrongKind(FileName, value, key, "a list of texts", Key(key).Example);

    /// <summary>The numbers of an entry that is a list.</summary>
    public ImmutableArray<decimal> ExactsIn(string key, TomlNode value) => value.Kind == TomlKind.List
        ? [.. value.Items.Select(item => ExactOf(item, Key(key)))]
        : throw TomlErrors.WrongKind(FileName, value, key, "a list of numbers", Key(key).Example);

    /// <summary>A fault in the line of a key.</summary>
    public ChannelAuditException Fault(string key, string found, string hint) => TomlErrors.At(FileName, LineOf(key), found, hint);

    private List<TomlNode> Items(string key, string wanted) => Find(key) switch
    {
        null => [],
        { Kind: TomlKind.List } list => list.Items,
        { } other => throw TomlErrors.WrongKind(FileName, other, key, wanted, Key(key).Example),
    };

    private TomlKey Key(string name) => _keys.First(key => string.Equals(key.Name, name, StringComparison.Ordinal));

    private string TextOf(TomlNode node, TomlKey key)
    {
        if (node.Kind != TomlKind.Text)
        {
            throw TomlErrors.WrongKind(FileName, node, key.Name, "text in quotes", key.Example);
        }

        string text = node.Text.Trim();
        if (text.Length == 0)
        {
            throw TomlErrors.Blank(FileName, node, key);
        }

        return text.Any(char.IsControl) ? throw TomlErrors.ControlCharacter(FileName, node, key) : text;
    }

    private double NumberOf(TomlNode node, TomlKey key)
    {
        if (!node.IsNumber)
        {
            throw TomlErrors.WrongKind(FileName, node, key.Name, "a number", key.Example);
        }

        // Written so that "nan" is out of every range.
        bool isInRange = double.IsFinite(node.Number) && node.Number >= key.Least && node.Number <= key.Most;
        return isInRange ? node.Number : throw TomlErrors.OutOfRange(FileName, node, key);
    }

    private decimal ExactOf(TomlNode node, TomlKey key)
    {
        double number = NumberOf(node, key);
        string digits = node.Text.Replace("_", string.Empty, StringComparison.Ordinal);
        bool isDecimal = decimal.TryParse(digits, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal exact);
        return isDecimal ? exact : (decimal)number;
    }
}
