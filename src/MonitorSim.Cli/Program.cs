using MonitorSim.Cli;

// Ctrl-C cancels; nothing half-written stays, as files are written aside first.
using var cancel = new CancellationTokenSource();
Console.CancelKeyPress += (_, press) =>
{
    press.Cancel = true;
    cancel.Cancel();
};
return CommandLine.Run(args, new Terminal(Console.Out, Console.Error, Console.OpenStandardOutput) { IsErrorTerminal = !Console.IsErrorRedirected }, cancel.Token);
