using System.Collections.Immutable;
using System.Globalization;

namespace ChannelAudit.Recordings.Text;

/// <summary>Collects the warnings about one file.</summary>
internal sealed class WarningList(string file)
{
    private readonly ImmutableArray<Warning>.Builder _warnings = ImmutableArray.CreateBuilder<Warning>();

    /// <summary>Adds a warning at a place.</summary>
    public void Add(string place, string message) => _warnings.Add(new Warning(file, place, message));

    /// <summary>Adds a warning at a line.</summary>
    public void AddLine(long line, string message) => Add("line " + line.ToString(CultureInfo.InvariantCulture), message);

    /// <summary>What was added, in that order.</summary>
    public ImmutableArray<Warning> ToImmutable() => _warnings.ToImmutable();
}
