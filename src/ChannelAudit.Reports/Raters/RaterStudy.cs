using System.Collections.Immutable;
using ChannelAudit.Lists;
using ChannelAudit.Reports.Stored;
using ChannelAudit.Results;
using ChannelAudit.Verdicts;

namespace ChannelAudit.Reports.Raters;

/// <summary>People's labels against an audit. Labels may come from anywhere; results are read one recording at a time, and only those with a label.</summary>
public sealed record RaterStudy
{
    /// <summary>The audit.</summary>
    public required StoredAudit Audit { get; init; }

    /// <summary>Labels given.</summary>
    public required int Labels { get; init; }

    /// <summary>All raters, ordinal order.</summary>
    public required ImmutableArray<string> Raters { get; init; }

    /// <summary>Labels of nothing in the audit, with the cause.</summary>
    public required ImmutableArray<(GivenLabel Label, string Cause)> Unmatched { get; init; }

    /// <summary>Labels that a later one of the same rater replaced.</summary>
    public required int Replaced { get; init; }

    /// <summary>Trials and whole channels apart; a kind without labels is not there.</summary>
    public required ImmutableArray<RatedSet> Sets { get; init; }

    /// <summary>Holds labels against an audit.</summary>
    /// <param name="audit">The audit.</param>
    /// <param name="labels">Labels in the order in which they were given.</param>
    /// <param name="cancel">Checked for every recording.</param>
    /// <exception cref="ChannelAuditException">When a result cannot be read.</exception>
    public static RaterStudy Of(StoredAudit audit, ImmutableArray<GivenLabel> labels, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(audit);
        StoredNames names = new(audit.Recordings);
        ImmutableArray<string> raters = [.. labels.Select(label => label.Rater).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        Dictionary<string, (StoredRecording? Found, string? Cause)> found = labels
            .Select(label => label.Place.Recording).Distinct(StringComparer.Ordinal).ToDictionary(name => name, names.Find, StringComparer.Ordinal);
        List<(GivenLabel Label, string Cause)> unmatched =
        [
            .. labels.Where(label => found[label.Place.Recording].Found is null).Select(label => (label, found[label.Place.Recording].Cause!)),
        ];
        ILookup<string, GivenLabel> byId = labels.Where(label => found[label.Place.Recording].Found is not null)
            .ToLookup(label => found[label.Place.Recording].Found!.Id, StringComparer.Ordinal);
        List<RatedThing> things = [];
        int replaced = 0;
        foreach (StoredRecording recording in audit.Recordings.Where(recording => byId.Contains(recording.Id)))
        {
            cancel.ThrowIfCancellationRequested();
            LabelledRecording labelled = new(audit.ResultOf(recording), raters);
            labelled.Take(byId[recording.Id]);
            things.AddRange(labelled.Things());
            unmatched.AddRange(labelled.Unmatched);
            replaced += labelled.Replaced;
        }

        return new RaterStudy
        {
            Audit = audit,
            Labels = labels.Length,
            Raters = raters,
            Unmatched = [.. unmatched.OrderBy(one => one.Label.Place.Line)],
            Replaced = replaced,
            Sets =
            [
                .. things.GroupBy(thing => thing.Trial is null ? RatedKind.Channels : RatedKind.Trials)
                    .OrderBy(group => group.Key)
                    .Select(group => new RatedSet(group.Key, raters, [.. group])),
            ],
        };
    }
}
