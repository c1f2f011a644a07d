using System.Globalization;
using ChannelAudit;
using ChannelAudit.Review;

CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;

try
{
    return await ReviewRun.Of(ServerOptions.Of(args), Console.Out, Console.OpenStandardInput());
}
catch (ChannelAuditException fault)
{
    Console.Error.Write($"error: {fault.Message}\nhint: {fault.Hint}\n");
    return fault.Kind == FaultKind.Recording ? 3 : 2;
}
catch (Exception fault) when (fault is not (StackOverflowException or AccessViolationException))
{
    Console.Error.Write($"error: this is a bug in channelaudit, not in your data: {fault.GetType().Name}\nhint: report it with what you did on the page\n");
    return 70;
}
