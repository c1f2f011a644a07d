using System.Collections.Immutable;
using System.Security.Cryptography;
using ChannelAudit.Text;

namespace ChannelAudit.Runs;

/// <summary>A small file that a run was made with, byte for byte, so that the run can be made again.</summary>
/// <param name="Role">What it was: one of the names below.</param>
/// <param name="FileName">Its name without its folder.</param>
/// <param name="Bytes">Its content.</param>
public sealed record RunInput(string Role, string FileName, ImmutableArray<byte> Bytes)
{
    /// <summary>The limits.</summary>
    public const string Criteria = "criteria";

    /// <summary>What was where.</summary>
    public const string Setup = "setup";

    /// <summary>The impedance readings.</summary>
    public const string Readings = "impedance";

    /// <summary>The events table given by name.</summary>
    public const string Events = "events";

    /// <summary>SHA-256 of its bytes in lower-case hexadecimal.</summary>
    public string Sha256 => Convert.ToHexStringLower(SHA256.HashData(Bytes.AsSpan()));

    /// <summary>Reads a file.</summary>
    /// <exception cref="ChannelAuditException">When it cannot be read; usage fault.</exception>
    public static RunInput Read(string role, string path)
    {
        try
        {
            return new RunInput(role, Path.GetFileName(path), ImmutableArray.Create(PlainFile.ReadAllBytes(path)));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new ChannelAuditException(
                FaultKind.Usage, $"{OneLine.Of(path)}: cannot be read: {OneLine.Of(fault.Message)}", "see that the file is still there and that you may read it", fault);
        }
    }
}
