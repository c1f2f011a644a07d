using ChannelAudit.Cli.Screening;
using ChannelAudit.Reports.Shares;
using ChannelAudit.Results;
using ChannelAudit.Runs;

namespace ChannelAudit.Cli.Tests.Screening;

/// <summary>The engine of the product, which remembers what it was asked to audit and may be interrupted.</summary>
internal sealed class CountingEngine : IScreenEngine
{
    private readonly AuditEngine _engine = new(new());
    private readonly List<string> _audited = [];

    /// <summary>One that ends the run as Ctrl-C does, when a recording is about to be audited.</summary>
    /// <param name="id">The recording.</param>
    /// <param name="source">What the run is ended by.</param>
    public static CountingEngine EndingAt(string id, CancellationTokenSource source) => new()
    {
        Before = next =>
        {
            if (string.Equals(next, id, StringComparison.Ordinal))
            {
                source.Cancel();
                source.Token.ThrowIfCancellationRequested();
            }
        },
    };

    /// <summary>Ids in ordinal order.</summary>
    public string Audited
    {
        get
        {
            lock (_audited)
            {
                return string.Join(' ', _audited.Order(StringComparer.Ordinal));
            }
        }
    }

    /// <summary>Called before a recording is audited.</summary>
    public Action<string>? Before { get; init; }

    public RecordingResult Audit(RecordingEntry recording, ScreenInputs inputs, string sha256, CancellationToken cancel)
    {
        Before?.Invoke(recording.Id);
        lock (_audited)
        {
            _audited.Add(recording.Id);
        }

        return _engine.Audit(recording, inputs, sha256, cancel);
    }

    public IScreenOutput Open(AuditRun run, string folder, FigureChoice figures, bool isAlone, SharePlan? share = null, bool withParquet = false) =>
        _engine.Open(run, folder, figures, isAlone, share, withParquet);
}
