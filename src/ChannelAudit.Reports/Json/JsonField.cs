using System.Collections.Immutable;
using System.Text.Json;
using ChannelAudit.Reports.Output;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Json;

/// <summary>A place in a JSON file that is being read back: every wrong value is reported with its place.</summary>
internal readonly struct JsonField
{
    private readonly JsonElement _element;
    private readonly string _file;
    private readonly string _place;

    /// <summary>Starts at a place.</summary>
    public JsonField(JsonElement element, string file, string place)
    {
        _element = element;
        _file = file;
        _place = place;
    }

    /// <summary>The object of that name.</summary>
    public JsonField Object(string name) => ObjectOrNull(name) ?? throw Wrong(name, "an object");

    /// <summary>An object that may be left out.</summary>
    public JsonField? ObjectOrNull(string name) => Find(name, JsonValueKind.Object);

    /// <summary>Whether there is a value of that name that is not null.</summary>
    public bool Has(string name) => _element.TryGetProperty(name, out JsonElement value) && value.ValueKind != JsonValueKind.Null;

    /// <summary>A text.</summary>
    public string Text(string name) => TextOrNull(name) ?? throw Wrong(name, "a text");

    /// <summary>A text, or null when it is null or not there.</summary>
    public string? TextOrNull(string name)
    {
        if (Find(name, JsonValueKind.String) is not { } field)
        {
            return null;
        }

        try
        {
            return field._element.GetString();
        }
        catch (InvalidOperationException)
        {
            // Half a surrogate pair is legal JSON but no text.
            throw Wrong(name, "a text");
        }
    }

    /// <summary>A number.</summary>
    public double Number(string name) => NumberOrNull(name) ?? throw Wrong(name, "a number");

    /// <summary>A number, or null when it is null or not there.</summary>
    public double? NumberOrNull(string name)
    {
        if (Find(name, JsonValueKind.Number) is not { } field)
        {
            return null;
        }

        double value = field._element.GetDouble();
        return double.IsFinite(value) ? value : throw Wrong(name, "a finite number");
    }

    /// <summary>A decimal number, exactly as written.</summary>
    public decimal Exact(string name) => ExactOrNull(name) ?? throw Wrong(name, "a number");

    /// <summary>A decimal number, or null when it is null or not there.</summary>
    public decimal? ExactOrNull(string name) => Find(name, JsonValueKind.Number) is not { } field
        ? null
        : field._element.TryGetDecimal(out decimal value) ? value : throw Wrong(name, "a decimal number");

    /// <summary>A whole number.</summary>
    public int Whole(string name) => WholeOrNull(name) ?? throw Wrong(name, "a whole number");

    /// <summary>A whole number, or null when it is null or not there.</summary>
    public int? WholeOrNull(string name) => Find(name, JsonValueKind.Number) is not { } field
        ? null
        : field._element.TryGetInt32(out int value) ? value : throw Wrong(name, "a whole number");

    /// <summary><c>true</c> or <c>false</c>.</summary>
    public bool Flag(string name) => _element.TryGetProperty(name, out JsonElement value) && value.ValueKind is JsonValueKind.True or JsonValueKind.False
        ? value.GetBoolean()
        : throw Wrong(name, "true or false");

    /// <summary>A verdict.</summary>
    public Grade Grade(string name) => GradeOrNull(name) ?? throw Wrong(name, "pass, questionable or reject");

    /// <summary>A verdict, or null when it is null or not there.</summary>
    public Grade? GradeOrNull(string name) => TextOrNull(name) is not { } word
        ? null
        : VerdictWords.FromCode(word) ?? throw Wrong(name, "pass, questionable or reject");

    /// <summary>A list of objects.</summary>
    public ImmutableArray<T> List<T>(string name, Func<JsonField, T> read)
    {
        JsonField list = Find(name, JsonValueKind.Array) ?? throw Wrong(name, "a list");
        ImmutableArray<T>.Builder items = ImmutableArray.CreateBuilder<T>(list._element.GetArrayLength());
        foreach (JsonElement element in list._element.EnumerateArray())
        {
            JsonField field = new(element, _file, $"{list._place}[{items.Count.Plain()}]");
            items.Add(element.ValueKind == JsonValueKind.Object ? read(field) : throw field.Wrong("an object"));
        }

        return items.MoveToImmutable();
    }

    /// <summary>A list of texts, empty when it is left out.</summary>
    public ImmutableArray<string> TextsOrNone(string name) => Find(name, JsonValueKind.Array) is null ? [] : Texts(name);

    /// <summary>A list of texts.</summary>
    public ImmutableArray<string> Texts(string name)
    {
        JsonField list = Find(name, JsonValueKind.Array) ?? throw Wrong(name, "a list");
        return [.. list._element.EnumerateArray().Select(element => element.ValueKind == JsonValueKind.String
            ? element.GetString()!
            : throw list.Wrong("a list of texts"))];
    }

    /// <summary>A list of numbers.</summary>
    public ImmutableArray<double> Numbers(string name)
    {
        JsonField list = Find(name, JsonValueKind.Array) ?? throw Wrong(name, "a list");
        return [.. list._element.EnumerateArray().Select(element => element.ValueKind == JsonValueKind.Number
            ? element.GetDouble()
            : throw list.Wrong("a list of numbers"))];
    }

    /// <summary>Every name of this object with its number, in the order of the file.</summary>
    public ImmutableArray<(string Name, double Value)> Numbers()
    {
        ImmutableArray<(string, double)>.Builder numbers = ImmutableArray.CreateBuilder<(string, double)>();
        foreach (JsonProperty property in _element.EnumerateObject())
        {
            numbers.Add((property.Name, Number(property.Name)));
        }

        return numbers.ToImmutable();
    }

    /// <summary>The fault of a value that is missing or of another kind.</summary>
    public ChannelAuditException Wrong(string name, string expected) =>
        OutputErrors.WrongValue(_file, _place.Length == 0 ? name : $"{_place}.{name}", expected);

    private ChannelAuditException Wrong(string expected) => OutputErrors.WrongValue(_file, _place, expected);

    private JsonField? Find(string name, JsonValueKind kind)
    {
        if (!_element.TryGetProperty(name, out JsonElement value) || value.ValueKind == JsonValueKind.Null)
        {
            return null;
        }

        string place = _place.Length == 0 ? name : $"{_place}.{name}";
        return value.ValueKind == kind
            ? new JsonField(value, _file, place)
            : throw OutputErrors.WrongValue(_file, place, kind switch
            {
                JsonValueKind.String => "a text",
                JsonValueKind.Number => "a number",
                JsonValueKind.Array => "a list",
                _ => "an object",
            });
    }
}
