using System.Collections.Immutable;

namespace ChannelAudit.Setup;

/// <summary>What is different for some recordings of a study: a <c>[[recordings]]</c> table.</summary>
public sealed record RecordingOverride
{
    /// <summary>The patterns; a recording that fits one of them is meant.</summary>
    public required ImmutableArray<PathPattern> Match { get; init; }

    /// <summary>Who it is, as a code; null: not said here.</summary>
    public string? Participant { get; init; }

    /// <summary>The group; null: not said here.</summary>
    public string? Group { get; init; }

    /// <summary>For sites by name the channel that they are here.</summary>
    public ImmutableDictionary<string, string> Channels { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>For sites by name the ids of the electrodes that they have here.</summary>
    public ImmutableDictionary<string, ImmutableArray<string>> Electrodes { get; init; } = ImmutableDictionary<string, ImmutableArray<string>>.Empty;

    /// <summary>How these recordings were made; what is null stays as it is for all.</summary>
    public RecordingSetup Recording { get; init; } = new();

    /// <summary>Whether it is about a recording.</summary>
    /// <param name="path">Its path below the given root.</param>
    public bool IsAbout(string path) => Match.Any(pattern => pattern.Fits(path));

    /// <summary>A setup with what is different.</summary>
    public StudySetup ApplyTo(StudySetup setup) => setup with
    {
        Recording = new RecordingSetup
        {
            MainsHz = Recording.MainsHz ?? setup.Recording.MainsHz,
            SamplingHz = Recording.SamplingHz ?? setup.Recording.SamplingHz,
            Unit = Recording.Unit ?? setup.Recording.Unit,
            AmplifierNoiseUv = Recording.AmplifierNoiseUv ?? setup.Recording.AmplifierNoiseUv,
            Lab = Recording.Lab ?? setup.Recording.Lab,
            Amplifier = Recording.Amplifier ?? setup.Recording.Amplifier,
            Technician = Recording.Technician ?? setup.Recording.Technician,
            Date = Recording.Date ?? setup.Recording.Date,
        },
        Sites =
        [
            .. setup.Sites.Select(site => site with
            {
                Channel = Channels.GetValueOrDefault(site.Name, site.Channel),
                Electrodes = Electrodes.GetValueOrDefault(site.Name, site.Electrodes),
            }),
        ],
    };
}
