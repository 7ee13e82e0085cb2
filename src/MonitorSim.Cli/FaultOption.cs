using System.CommandLine;
using MonitorSim.Motion;

namespace MonitorSim.Cli;

/// <summary><c>--fault</c> of replays: what is to go wrong, in words.</summary>
internal static class FaultOption
{
    public static Option<string[]> Create() => new("--fault")
    {
        Description = "Lets something go wrong: AXIS FAULT or AXIS.CHANNEL FAULT with from, until and what the fault has, such as \"lift runaway from 1.2 s\" (with simulated motion: openBrake, rampIgnored, "
            + "runaway, torqueLoss), \"lift.velocity stuck from 2 s until 2.1 s\" (drift, dropOut, reversed, scaled, step, stuck), \"acknowledgement late by 250 ms\". May be given several times.",
        HelpName = "FAULT",
    };

    /// <summary>What was given.</summary>
    /// <exception cref="InputException">Faults that are none: all of them.</exception>
    public static IReadOnlyList<Injection> Read(string[]? texts)
    {
        var (faults, problems) = (new List<Injection>(), new List<Problem>());
        foreach (var text in texts ?? [])
        {
            try
            {
                faults.Add(Injection.Parse(text));
            }
            catch (InputException wrong)
            {
                problems.AddRange(wrong.Problems);
            }
        }

        return problems.Count == 0 ? faults : throw new InputException(problems);
    }
}
