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
    /// <summary>Exit code: whoever started it stopped it, by Ctrl-C; the number that shells give.</summary>
    public const int Cancelled = 130;

    public static int Run(string[] args, Terminal terminal)
    {
        var root = new RootCommand("Replays recordings of motion through monitoring functions: what would have tripped, why, and what would have avoided it. "
            + Cautions.Text);
        foreach (var command in new Command[]
        {
            DemoCommand.Create(terminal), DescribeCommand.Create(terminal), ReplayCommand.Create(terminal), ExplainCommand.Create(terminal),
            TuneCommand.Create(terminal), StopCommand.Create(terminal), CheckCommand.Create(terminal), FitCommand.Create(terminal), SynthCommand.Create(terminal), SchemaCommand.Create(terminal),
            VectorsCommand.Create(terminal),
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
        catch (OperationCanceledException) when (terminal.Cancel.IsCancellationRequested)
        {
            terminal.Error.WriteLine("cancelled; no file is left half-written");
            return Cancelled;
        }
        catch (OutOfMemoryException)
        {
            terminal.Error.WriteLine("there is not enough memory; give a shorter recording, or fewer columns and monitors in the plan");
        }
        catch (IOException wrong)
        {
            // Files say their own names: what is left is the text for people.
            terminal.Error.WriteLine(Writing.Problem("standard output", wrong));
        }
        catch (Exception wrong)
        {
            var where = wrong.StackTrace?.Split('\n')[0].Trim() ?? "";
            terminal.Error.WriteLine($"this is an error of monitorsim itself, please report it: {wrong.GetType().Name}: {string.Join(' ', wrong.Message.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))} ({where})");
        }

        return Failed;
    }
}
