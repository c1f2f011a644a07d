using Xunit;

namespace ChannelAudit.Core.Tests.Recordings.Edf;

/// <summary>Finds the real recordings that are not part of the repository.</summary>
internal static class RealFile
{
    public static string Path(string relative)
    {
        string? root = Environment.GetEnvironmentVariable("CHANNELAUDIT_REAL_DATA");
        Skip.If(string.IsNullOrEmpty(root), "CHANNELAUDIT_REAL_DATA does not name the folder of real recordings");
        return System.IO.Path.Combine(root, relative);
    }
}
