using Spectre.Console;

namespace MonitorSim.Cli;

/// <summary>Shows on standard error how far long work is, where that is a terminal.</summary>
internal static class ProgressBar
{
    /// <summary>Does the work with a bar of so many steps; without a terminal, or for a single step, just does it.</summary>
    public static T Over<T>(Terminal terminal, string what, int steps, bool quiet, Func<IProgress<int>?, T> work)
    {
        if (quiet || !terminal.IsErrorTerminal || steps < 2) return work(null);
        var console = AnsiConsole.Create(new() { Out = new AnsiConsoleOutput(terminal.Error) });
        return console.Progress().AutoClear(true).Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn()).Start(context =>
        {
            var task = context.AddTask(what, maxValue: steps);
            return work(new Steps(task));
        });
    }

    // Reported in the order of the work; Progress<T> would hand reports over to other threads.
    private sealed class Steps(ProgressTask task) : IProgress<int>
    {
        public void Report(int value) => task.Increment(1);
    }
}
