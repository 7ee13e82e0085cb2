using System.Text.Json.Serialization;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis;

/// <summary>A synthetic recording: what axes do, what is measured of it and how badly, and which signals there are. The same thing that a scenario
/// file says in JSON; the same bytes everywhere, for it draws on nothing but its own seed.</summary>
public sealed record Scenario
{
    /// <summary>Format version; 1.</summary>
    [JsonPropertyName("scenario"), AlwaysWritten] public int Version { get; init; } = 1;
    /// <summary>What it shows, in the user's words.</summary>
    public string Title { get; init; } = "";
    /// <summary>Samples a second, at most 1 GHz: t_k = k / rate, rounded to the nanosecond, so that nothing accumulates.</summary>
    [Kind(Kind.Rate, Allowed.Positive)] public required Quantity Rate { get; init; }
    /// <summary>Which noise and jitter, 0 or more.</summary>
    public int Seed { get; init; }
    /// <summary>How long it is; null: as long as the axis that moves longest. Axes that end sooner keep their last speed.</summary>
    [Kind(Kind.Time)] public Quantity? Duration { get; init; }
    /// <summary>Samples are taken up to so much earlier or later, evenly spread, and carry the time at which they were taken. Less than half a
    /// sampling period; the first sample is always at 0.</summary>
    [Kind(Kind.Time)] public Quantity? Jitter { get; init; }
    /// <summary>Pairs of from and until: rows with from &lt;= t &lt; until are not in the recording. The first row always is.</summary>
    [Kind(Kind.Time)] public IReadOnlyList<IReadOnlyList<Quantity>>? MissingRows { get; init; }
    /// <summary>How the recording is written; what is not said is as <see cref="Traces.TraceWriter"/> has it.</summary>
    public TraceFormat Trace { get; init; } = new();
    /// <summary>The axes by name.</summary>
    public required IReadOnlyDictionary<string, ScenarioAxis> Axes { get; init; }
    /// <summary>Signals by the name of their column: <c>true</c> or <c>false</c> a sample. Steps can switch further ones.</summary>
    public IReadOnlyDictionary<string, ScenarioSignal> Signals { get; init; } = new Dictionary<string, ScenarioSignal>();

    /// <summary>The scenario that a profile is: one axis, named <c>axis</c>.</summary>
    /// <param name="profile">The profile.</param>
    public static Scenario Of(Profile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        return new() { Rate = profile.Rate, Axes = new Dictionary<string, ScenarioAxis> { ["axis"] = ScenarioAxis.Of(profile) } };
    }

    /// <summary>The recording.</summary>
    /// <param name="name">What to call it.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="InputException">Errors in the scenario: all of them; or more samples than a recording can hold.</exception>
    public Trace ToTrace(string name, CancellationToken cancel = default)
    {
        var problems = ScenarioChecks.Check(this);
        return problems.Count == 0 ? new ScenarioSampler(this).Sample(name, cancel) : throw new InputException(problems);
    }
}

/// <summary>A signal of a scenario.</summary>
public sealed record ScenarioSignal
{
    /// <summary>Pairs of from and until: on where from &lt;= t &lt; until.</summary>
    [Kind(Kind.Time)] public required IReadOnlyList<IReadOnlyList<Quantity>> Windows { get; init; }
}
