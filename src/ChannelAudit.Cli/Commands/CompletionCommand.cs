using System.CommandLine;
using ChannelAudit.Cli.Completion;

namespace ChannelAudit.Cli.Commands;

/// <summary><c>completion</c>: the script that a shell needs to complete this program's words.</summary>
internal static class CompletionCommand
{
    private static readonly HelpText Help = new()
    {
        Purpose =
            """
            For whoever types these commands, once for each shell: from then on the tab key completes commands,
            options and their values, and offers files everywhere else. You get a short script on standard
            output; the shell reads it at its start. channelaudit has to be on the path.
            """,
        Examples =
        [
            new("channelaudit completion bash >> ~/.bashrc", "bash: works in every shell opened from now on"),
            new("channelaudit completion zsh >> ~/.zshrc", "zsh, the same"),
            new("channelaudit completion fish > ~/.config/fish/completions/channelaudit.fish", "fish, the same"),
            new("channelaudit completion pwsh >> $PROFILE", "PowerShell, the same"),
        ],
    };

    /// <summary>Builds the command.</summary>
    public static Command Create(CommandContext context, HelpWithExample help)
    {
        var shell = new Argument<string>("SHELL")
        {
            Description = "bash, zsh, fish or pwsh",
            HelpName = "SHELL",
            CompletionSources = { ShellScript.Shells },
        };
        var command = new Command("completion", "Prints a script for your shell, so that the tab key completes what you type.") { shell };
        command.SetAction(parse =>
        {
            string given = parse.GetRequiredValue(shell);
            context.Output.Write(ShellScript.For(given) ?? throw UsageErrors.NotAmong("SHELL", given, ShellScript.Shells));
            return ExitCode.Done;
        });
        help.Add(command, Help);
        return command;
    }
}
