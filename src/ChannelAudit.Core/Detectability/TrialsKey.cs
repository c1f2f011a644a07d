using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ChannelAudit.Segments;

namespace ChannelAudit.Detectability;

/// <summary>One hash over the trials of a recording: events given by a table are not part of the recording's own hash.</summary>
public static class TrialsKey
{
    /// <summary>The SHA-256 of numbers, roles, labels and windows, in lower-case hexadecimal.</summary>
    public static string Of(ImmutableArray<Trial> trials)
    {
        StringBuilder text = new();
        foreach (Trial trial in trials)
        {
            text.Append(FormattableString.Invariant($"{trial.Number} {(int)trial.Role} {trial.Label?.Length ?? -1}:{trial.Label} {trial.WindowFromS:G29} {trial.WindowToS:G29}\n"));
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));
    }
}
