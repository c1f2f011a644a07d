using System.Collections.Immutable;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Bundles;

/// <summary>What a bundle holds: <c>bundle.json</c>, described in <c>docs/bundle.md</c>.</summary>
public sealed record BundleIndex
{
    /// <summary>The name of the file.</summary>
    public const string FileName = "bundle.json";

    /// <summary>Names the layout.</summary>
    public const string Format = "channelaudit-bundle/1";

    /// <summary>Below which the files of the audit stand.</summary>
    public const string AuditFolder = "audit/";

    /// <summary>Seconds of samples on each side of a window.</summary>
    public const decimal MarginS = 0.5m;

    /// <summary>The version of the program that made it.</summary>
    public required string Version { get; init; }

    /// <summary>SHA-256 of the limits in force.</summary>
    public required string CriteriaSha256 { get; init; }

    /// <summary>The mildest verdict that has its samples here.</summary>
    public required Grade Least { get; init; }

    /// <summary>What windows need of their channels.</summary>
    public required ImmutableArray<BundleRecording> Recordings { get; init; }

    /// <summary>Channels and trials that are left out, or would be.</summary>
    public required ImmutableArray<Exclusion> Exclusions { get; init; }

    /// <summary>The samples.</summary>
    public required ImmutableArray<BundleBlock> Blocks { get; init; }

    /// <summary>Trials of channels whose samples it could not take.</summary>
    public ImmutableArray<BundleOmission> Omitted { get; init; } = [];

    /// <summary>Every other file of the bundle.</summary>
    public required ImmutableArray<BundleEntry> Entries { get; init; }
}
