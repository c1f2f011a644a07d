using System.Globalization;
using ChannelAudit.Cli;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Cli.Screening;
using ChannelAudit.Reports.Console;

if (FrontPage.IsAskedBy(args))
{
    return FrontPage.Write();
}

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

using var interrupt = new Interrupt();
TerminalStyle style = TerminalLook.Of();
using var context = new CommandContext(Console.Out, Console.Error, new AuditEngine(style)) { Style = style, IsTerminal = !Console.IsOutputRedirected, ProgressColumns = Console.IsErrorRedirected ? 0 : style.Columns };
return await CommandLine.RunAsync(args, context, interrupt.Token);
