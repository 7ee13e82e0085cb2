using MonitorSim.Quantities;

namespace MonitorSim.Assertions;

/// <summary>Times that tests write.</summary>
internal static class Times
{
    /// <summary>Exact decimal seconds.</summary>
    /// <exception cref="InputException">No duration.</exception>
    public static decimal Seconds(Quantity time)
    {
        ArgumentNullException.ThrowIfNull(time);
        if (time.Unit.Dimension != Dimension.Second) throw new InputException(new Problem("expectation", $"'{time}' is no time", "write one such as 0.512 s or 512 ms"));
        return time.Nanoseconds / 1_000_000_000m;
    }

    /// <summary>"2 ms earlier".</summary>
    public static string Difference(decimal found, decimal wanted) => $"{ReplayFacts.Time(Math.Abs(found - wanted))} {(found < wanted ? "too early" : "too late")}";
}
