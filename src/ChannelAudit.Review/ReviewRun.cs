using System.Reflection;
using System.Runtime.InteropServices;
using ChannelAudit.Reports.Deciding;
using ChannelAudit.Reports.Reviewing;
using ChannelAudit.Text;

namespace ChannelAudit.Review;

/// <summary>A review from its start to Ctrl-C.</summary>
internal static class ReviewRun
{
    private static string Version { get; } =
        typeof(ReviewRun).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>Serves the page until it is told to end, and brings tables and pages up to date then.</summary>
    /// <param name="options">What it was started with.</param>
    /// <param name="output">For the address.</param>
    /// <param name="input">Ends the review with its own end, when the options say so.</param>
    /// <returns>The exit code.</returns>
    /// <exception cref="ChannelAuditException">When the audit cannot be reviewed so, or the port is taken.</exception>
    public static async Task<int> Of(ServerOptions options, TextWriter output, Stream input)
    {
        using CancellationTokenSource ended = new();
        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, End);
        using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, End);
        using PosixSignalRegistration closed = PosixSignalRegistration.Create(PosixSignal.SIGHUP, End);
        ReviewBook book = ReviewBook.Open(options.Review with { Version = Version }, ended.Token);
        Task following = options.FollowsInput ? Task.Run(() => EndWith(input, ended)) : Task.CompletedTask;
        await using (ReviewServer server = await ReviewServer.Start(book, options.Port, TimeProvider.System, Update, Show, ended.Token))
        {
            await output.WriteAsync(StartWords.Of(book, server.Pictures));
            await server.Wait(ended.Token);
        }

        _ = following;
        await output.WriteAsync(Finish(book));
        return 0;

        void End(PosixSignalContext signal)
        {
            signal.Cancel = true;
            ended.Cancel();
        }

        bool Update(CancellationToken cancel) => AuditUpdate.Run(options.Review.Folder, Version, cancel);

        void Show(string address) => output.Write($"Open in a browser (works once): {address}\n");
    }

    private static string Finish(ReviewBook book) => !book.Options.IsReadOnly && AuditUpdate.Run(book.Options.Folder, Version, CancellationToken.None)
        ? $"Tables and pages in {OneLine.Of(book.Options.Folder)} are up to date.\n"
        : string.Empty;

    private static void EndWith(Stream input, CancellationTokenSource ended)
    {
        byte[] nothing = new byte[64];
        while (input.Read(nothing) > 0)
        {
            // What is typed is nobody's business here.
        }

        ended.Cancel();
    }
}
