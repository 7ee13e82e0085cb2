using System.CommandLine;

namespace MonitorSim.Cli;

/// <summary>The command <c>monitorsim</c>: its commands, and what all of them do about errors.</summary>
internal static class CommandLine
{
    /// <summary>Exit code: clean, or done.</summary>
    public const int Clean = 0;
    /// <summary>Exit code: something tripped, or an expectation failed.</summary>
    public const int Tripped = 1;
    /// <summary>Exit code: it could not be done; messages are on standard error.</summary>
    public const int Failed = 2;

    public static int Run(string[] args, Terminal terminal, CancellationToken cancel = default)
    {
        var root = new RootCommand("Replays recordings of motion through monitoring functions: what would have tripped, why, and what would have avoided it. "
            + Cautions.Short);
        foreach (var command in new Command[]
        {
            DemoCommand.Create(terminal, cancel), DescribeCommand.Create(terminal), ReplayCommand.Create(terminal, cancel), ExplainCommand.Create(terminal, cancel),
            TuneCommand.Create(terminal, cancel), StopCommand.Create(terminal, cancel), CheckCommand.Create(terminal, cancel), FitCommand.Create(terminal), SynthCommand.Create(terminal), SchemaCommand.Create(terminal),
            VectorsCommand.Create(terminal, cancel),
        }) root.Add(command);
        var parsed = root.Parse(args);
        if (parsed.Errors.Count > 0)
        {
            foreach (var error in parsed.Errors) terminal.Error.WriteLine(string.Join(' ', error.Message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
            return Failed;
        }

        return parsed.Invoke(new() { Output = terminal.Out, Error = terminal.Error, EnableDefaultExceptionHandler = false });
    }

    /// <summary>Does the work of a command and turns what goes wrong into messages and an exit code.</summary>
    public static int Guard(Terminal terminal, Func<int> work)
    {
        try
        {
            return work();
        }
        catch (InputException wrong)
        {
            foreach (var problem in wrong.Problems) terminal.Error.WriteLine(problem);
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine(wrong.Message);
        }
        catch (OperationCanceledException)
        {
            terminal.Error.WriteLine("cancelled");
        }

        return Failed;
    }
}
