using System.CommandLine;
using ChannelAudit.Cli.Verifying;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>verify</c>: is an audit what its recordings, limits and decisions give?</summary>
internal static class VerifyCommand
{
    private const int MostJobs = 1024;

    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For the reviewer who asks whether exclusions come from the recordings, limits and decisions that
            they claim to come from. You get a short list of checks, each ok, differs or not checked with the
            cause, and the first difference by file, line and column. Everything is hashed and made again in a
            temporary folder; no stored hash is believed, and nothing is written into the audit or the data.
            """,
        Notes =
            """
            Without --data no sample is looked at: tables are made again from the results in the audit.
            Exit codes: 0 the same; 1 a difference; 2 wrong usage or no audit; 3 a recording is missing or
            cannot be read; 130 interrupted; 70 our bug.
            """,
        Examples =
        [
            new("channelaudit verify study-audit --data study/", "everything again, pictures too"),
            new("channelaudit verify study-audit --data study/ --no-pictures", "the same without drawing, which takes most of the time"),
            new("channelaudit verify study-audit", "are tables and decisions what the results give?"),
            new("channelaudit verify evidence.zip", "a bundle: each exclusion against the samples in it"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        Argument<string> audit = new("DIR") { Description = "the folder of an audit, or a bundle: the file that export bundle wrote" };
        Option<string> data = new("--data") { HelpName = "ROOT", Description = "where its recordings are: the folder that screen was given, or one above it" };
        Option<bool> noPictures = new("--no-pictures") { Description = "take pictures as they are" };
        Option<int?> jobs = new("--jobs") { HelpName = "N", Description = "recordings at the same time; left out: as many as there are processors" };
        Command command = new("verify", "Checks an audit against its recordings, limits and decisions, and makes it again.") { audit, data, noPictures, jobs };
        command.SetAction((parse, cancel) => Task.FromResult(Run(
            new VerifyRequest(parse.GetRequiredValue(audit), parse.GetValue(data), !parse.GetValue(noPictures), Checked(parse.GetValue(jobs))), context.Output, cancel)));
        help.Add(command, Help);
        return command;
    }

    private static int Run(VerifyRequest request, TextWriter output, CancellationToken cancel)
    {
        if (!File.Exists(request.Folder))
        {
            return new VerifyRunner(request).Run(output, cancel);
        }

        return request.Data is null
            ? new BundleVerifyRunner(request.Folder).Run(output, cancel)
            : throw UsageErrors.NotTogether("channelaudit verify", "a bundle", "--data");
    }

    private static int? Checked(int? jobs) => jobs is < 1 or > MostJobs ? throw UsageErrors.OutOfRange("--jobs", jobs.Value, 1, MostJobs) : jobs;
}
