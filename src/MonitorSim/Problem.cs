namespace MonitorSim;

/// <summary>One thing that is wrong with an input, and what would be right.</summary>
/// <param name="Place">File and position, such as <c>plan.json(12,7)</c>, or the path of a field for a plan built in C#.</param>
/// <param name="What">What is wrong, with the offending text.</param>
/// <param name="Fix">What would be right; empty where nothing can be said.</param>
public sealed record Problem(string Place, string What, string Fix = "")
{
    /// <summary>The problem as one line: control characters, which names in a file may hold, are written as JSON writes them.</summary>
    public override string ToString() => PrintableText.Of(Fix.Length == 0 ? $"{Place}: {What}" : $"{Place}: {What}; {Fix}");
}

/// <summary>An input (plan, recording, scenario) cannot be used. Carries every problem found, not only the first.</summary>
public sealed class InputException : Exception
{
    /// <summary>Creates the exception from at least one problem.</summary>
    public InputException(IReadOnlyList<Problem> problems)
        : base(string.Join(Environment.NewLine, problems)) => Problems = problems;

    /// <summary>Creates the exception from one problem.</summary>
    public InputException(Problem problem) : this([problem]) { }

    /// <summary>All problems, in the order of the input.</summary>
    public IReadOnlyList<Problem> Problems { get; }
}
