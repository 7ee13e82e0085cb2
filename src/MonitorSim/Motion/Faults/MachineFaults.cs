namespace MonitorSim.Motion.Faults;

/// <summary>The faults of drive and brake by their words. A new one goes into this list, in alphabetical order.</summary>
public static class MachineFaults
{
    private static readonly MachineFault[] Known = [new OpenBrakeFault(), new IgnoredRampFault(), new RunawayFault(), new TorqueLossFault()];

    /// <summary>The words that there are.</summary>
    public static IReadOnlyList<string> Words => [.. Known.Select(fault => fault.Fault)];

    /// <summary>The fault of a word, from the beginning on.</summary>
    /// <exception cref="InputException">There is no such fault; the message names the closest.</exception>
    public static MachineFault Named(string word) => Known.FirstOrDefault(fault => fault.Fault == word)
        ?? throw new InputException(new Problem("fault", $"there is no fault '{word}'", ClosestName.Advice(word, [.. Words], "fault")));
}
