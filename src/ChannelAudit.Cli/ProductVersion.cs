using System.Reflection;

namespace ChannelAudit.Cli;

/// <summary>The version of the program.</summary>
internal static class ProductVersion
{
    /// <summary>As in <c>0.1.0</c>.</summary>
    public static string Text { get; } =
        typeof(ProductVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";
}
