namespace MonitorSim.Plans;

/// <summary>Something wrong at a place of a plan.</summary>
/// <param name="Path">Where.</param>
/// <param name="What">What is wrong, beginning with the member's name.</param>
/// <param name="Fix">What would be right.</param>
internal sealed record Finding(PlanPath Path, string What, string Fix)
{
    /// <summary>Members whose own errors explain this one away.</summary>
    public IReadOnlyList<PlanPath> Concerns { get; init; } = [];

    /// <summary>Line and column, where they are not those of the path.</summary>
    public (int Line, int Column)? Position { get; init; }

    /// <summary>Splits a message of the form "what; fix".</summary>
    public static Finding Of(PlanPath path, string message)
    {
        var split = message.IndexOf("; ", StringComparison.Ordinal);
        return split < 0 ? new(path, $"{path.Name}: {message}", "") : new(path, $"{path.Name}: {message[..split]}", message[(split + 2)..]);
    }

    public Problem At(string place) => new(place, What, Fix);
}
