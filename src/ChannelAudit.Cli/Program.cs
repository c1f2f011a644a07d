using System.Globalization;
using ChannelAudit.Cli;
using ChannelAudit.Cli.Commands;
using ChannelAudit.Cli.Screening;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

using var interrupt = new Interrupt();
using var context = new CommandContext(Console.Out, Console.Error, new AuditEngine(TerminalLook.Of()));
return await CommandLine.RunAsync(args, context, interrupt.Token);
