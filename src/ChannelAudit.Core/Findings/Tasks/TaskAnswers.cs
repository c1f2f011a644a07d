using System.Collections.Immutable;
using ChannelAudit.Measures;
using ChannelAudit.Segments;
using ChannelAudit.Setup;
using ChannelAudit.Survey;

namespace ChannelAudit.Findings.Tasks;

/// <summary>How strongly each channel answers each trial that asks for a voluntary contraction.</summary>
/// <remarks>Only instructed contractions: the size of a response in a scored trial is what the study is about, and never a reason to leave it out.</remarks>
public sealed class TaskAnswers
{
    private readonly RecordingSurvey survey;
    private readonly ImmutableArray<Trial> trials;
    private readonly ImmutableArray<TrialReadings> windows;
    private readonly ImmutableArray<string?> tasks;

    /// <summary>Prepares the answers of a recording.</summary>
    /// <param name="survey">Its survey.</param>
    /// <param name="setup">Says which label asks which site.</param>
    /// <param name="trials">The trials.</param>
    /// <param name="windows">What each trial's window shows.</param>
    public TaskAnswers(RecordingSurvey survey, StudySetup setup, ImmutableArray<Trial> trials, ImmutableArray<TrialReadings> windows)
    {
        this.survey = survey;
        this.trials = trials;
        this.windows = windows;
        tasks = [.. survey.Channels.Select(channel =>
            setup.Sites.FirstOrDefault(site => string.Equals(site.Name, channel.Name, StringComparison.Ordinal))?.Task?.Trim())];
    }

    /// <summary>Number of channels.</summary>
    public int Channels => survey.Channels.Length;

    /// <summary>A channel's name.</summary>
    public string NameOf(int channel) => survey.Channels[channel].Name;

    /// <summary>The trials, by their place in the list, that ask a channel's own muscle.</summary>
    public ImmutableArray<int> OwnOf(int channel) => tasks[channel] is { } task
        ? [.. Enumerable.Range(0, trials.Length).Where(i => trials[i].Role == TrialRole.Task && string.Equals(trials[i].Label, task, StringComparison.Ordinal))]
        : [];

    /// <summary>The answer of any channel in a trial; without a value its cause.</summary>
    public ContractionAnswer In(int channel, int trial)
    {
        WindowReading reading = windows[trial].Windows[channel];
        if (reading.EmgPower is not { } power)
        {
            return new ContractionAnswer(null, reading.NoSpectrum ?? "no EMG band");
        }

        return survey.Channels[channel].Quiet.RestPower is { } rest and > 0
            ? new ContractionAnswer(ContractionSnr.Of(power, rest), null)
            : new ContractionAnswer(null, "no rest to compare with");
    }

    /// <summary>The best of a channel's answers to its own tasks: a site that answered once is connected. Null when none was asked of it.</summary>
    public ContractionAnswer? Best(int channel)
    {
        ImmutableArray<int> own = OwnOf(channel);
        if (own.IsEmpty)
        {
            return null;
        }

        ContractionAnswer[] answers = [.. own.Select(trial => In(channel, trial))];
        return answers.Max(answer => answer.Snr) is { } best ? new ContractionAnswer(best, null) : answers[0];
    }
}
