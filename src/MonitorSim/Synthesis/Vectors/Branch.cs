namespace MonitorSim.Synthesis.Vectors;

/// <summary>One decision of a monitor, a stop or the reactor, seen from one side: <c>limit</c> from <c>at</c> and from <c>above</c>.</summary>
/// <param name="Axis">The axis.</param>
/// <param name="Monitor">The monitor or stop.</param>
/// <param name="Side">The limit side; null where the decision belongs to none.</param>
/// <param name="Level">The level, from 0; null where there are none.</param>
/// <param name="Rule">What is decided, such as <c>limit</c>, <c>filter</c> or <c>delay</c>.</param>
/// <param name="From">From which side the decision is met.</param>
public sealed record Branch(string Axis, string Monitor, string? Side, int? Level, string Rule, string From)
{
    /// <summary>For people.</summary>
    public override string ToString() => FormattableString.Invariant(
        $"{Axis}.{Monitor}{(Side is null ? "" : " " + Side)}{(Level is { } level ? $" level {level}" : "")}: {Rule}, {From}");
}

/// <summary>A branch that no vector meets.</summary>
/// <param name="Branch">The branch.</param>
/// <param name="Why">Why not, in a sentence.</param>
public sealed record MissedBranch(Branch Branch, string Why);
