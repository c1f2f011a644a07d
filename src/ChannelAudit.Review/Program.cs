using System.Globalization;
using ChannelAudit;
using ChannelAudit.Review;
using ChannelAudit.Text;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;

try
{
    await using Stream input = Console.OpenStandardInput();
    return await ReviewRun.Of(ServerOptions.Of(args), Console.Out, input);
}
catch (ChannelAuditException fault)
{
    await Console.Error.WriteAsync($"error: {OneLine.Whole(fault.Message)}\nhint: {OneLine.Whole(fault.Hint)}\n");
    return fault.Kind == FaultKind.Recording ? 3 : 2;
}
catch (Exception fault) when (fault is not (StackOverflowException or AccessViolationException))
{
    await Console.Error.WriteAsync($"error: this is a bug in channelaudit, not in your data: {fault.GetType().Name}\nhint: report it with what you did on the page\n");
    return 70;
}
