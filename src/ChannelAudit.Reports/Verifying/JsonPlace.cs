using System.Globalization;
using System.Text;
using System.Text.Json;

namespace ChannelAudit.Reports.Verifying;

/// <summary>Where a reader stands in a JSON file, as a path of names and positions.</summary>
internal sealed class JsonPlace
{
    private readonly List<(bool IsList, string Name, int Index)> _open = [];

    /// <summary>Follows the reader to its next token.</summary>
    /// <param name="token">The token.</param>
    /// <param name="name">The name, of a property.</param>
    public void Enter(JsonTokenType token, string? name)
    {
        switch (token)
        {
            case JsonTokenType.PropertyName:
                _open[^1] = (false, name ?? "a name", 0);
                break;
            case JsonTokenType.EndArray or JsonTokenType.EndObject:
                _open.RemoveAt(_open.Count - 1);
                break;
            default:
                Next();
                if (token is JsonTokenType.StartArray or JsonTokenType.StartObject)
                {
                    _open.Add((token == JsonTokenType.StartArray, string.Empty, -1));
                }

                break;
        }
    }

    /// <inheritdoc/>
    public override string ToString()
    {
        StringBuilder text = new();
        foreach ((bool isList, string name, int index) in _open)
        {
            _ = isList && index >= 0
                ? text.Append(CultureInfo.InvariantCulture, $"[{index}]")
                : text.Append(text.Length == 0 || name.Length == 0 ? string.Empty : ".").Append(name);
        }

        return text.Length == 0 ? "the whole" : text.ToString();
    }

    private void Next()
    {
        if (_open.Count > 0 && _open[^1].IsList)
        {
            _open[^1] = _open[^1] with { Index = _open[^1].Index + 1 };
        }
    }
}
