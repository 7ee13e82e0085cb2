using System.Runtime.InteropServices;
using MonitorSim.Cli;

// Whoever wants it to end is heard once; the second time it ends at once.
using var cancel = new CancellationTokenSource();
using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, End);
using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, End);
return CommandLine.Run(args, new Terminal(Console.Out, Console.Error, Console.OpenStandardOutput) { IsErrorTerminal = !Console.IsErrorRedirected, Cancel = cancel.Token });

void End(PosixSignalContext signal)
{
    signal.Cancel = !cancel.IsCancellationRequested;
    cancel.Cancel();
}
