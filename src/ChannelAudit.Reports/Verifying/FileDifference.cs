namespace ChannelAudit.Reports.Verifying;

/// <summary>The first place at which a file is other than it is when it is made again.</summary>
/// <param name="File">The file below the folder of the audit, with <c>/</c>.</param>
/// <param name="Place">Line and column or field, in words; empty where the file as a whole is meant.</param>
/// <param name="There">What stands there.</param>
/// <param name="Again">What comes out when it is made again.</param>
public sealed record FileDifference(string File, string Place, string There, string Again)
{
    /// <summary>What stands for a line or a file that is not there.</summary>
    public const string Nothing = "(nothing)";

    private const int Longest = 120;

    /// <summary>A value short enough for a line.</summary>
    internal static string Short(string value) => value.Length <= Longest ? value : value[..Longest] + "...";
}
