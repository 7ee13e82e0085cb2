using System.Text.Json.Serialization;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim;

/// <summary>What to monitor, how to stop, and how to read the recording: the same thing that a plan file says in JSON.</summary>
public sealed record Plan
{
    /// <summary>Format version; 1.</summary>
    [JsonPropertyName("plan"), AlwaysWritten] public int Version { get; init; } = 1;
    /// <summary>What the plan is for, in the user's words.</summary>
    public string Title { get; init; } = "";
    /// <summary>The cycle of monitors and reactor; null runs them once per sample (<c>"trace"</c>).</summary>
    [Kind(Kind.Time, Allowed.Positive), NullWord("trace")] public Quantity? Cycle { get; init; }
    /// <summary>Offset of an own cycle, 0 &lt;= phase &lt; cycle.</summary>
    [Kind(Kind.Time)] public Quantity? Phase { get; init; }
    /// <summary>Age of the newest sample that a cycle can see.</summary>
    [Kind(Kind.Time)] public Quantity? InputDelay { get; init; }
    /// <summary>From the trip's cycle to the moment the drive acts (simulated motion only).</summary>
    [Kind(Kind.Time)] public Quantity? ReactionDelay { get; init; }
    /// <summary>A longer step between samples is a gap; null: 5 times the median step.</summary>
    [Kind(Kind.Time, Allowed.Positive)] public Quantity? Gap { get; init; }
    /// <summary>What a missing cell or a gap does.</summary>
    public MissingPolicy Missing { get; init; }
    /// <summary>Whether an axis stays on the recording after a reaction or follows its plant.</summary>
    public MotionSource Motion { get; init; }
    /// <summary>How to read the recording; what is not said is worked out from the file.</summary>
    public TraceFormat Trace { get; init; } = new();
    /// <summary>Boolean inputs by name.</summary>
    public IReadOnlyDictionary<string, SignalPlan> Signals { get; init; } = new Dictionary<string, SignalPlan>();
    /// <summary>The signal that acknowledges trips; null: nothing can be acknowledged.</summary>
    public AcknowledgePlan? Acknowledge { get; init; }
    /// <summary>Axes that stop together, by the group's name.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Groups { get; init; } = new Dictionary<string, IReadOnlyList<string>>();
    /// <summary>The axes by name.</summary>
    public IReadOnlyDictionary<string, AxisPlan> Axes { get; init; } = new Dictionary<string, AxisPlan>();
    /// <summary>The hash of the file that the plan was read from, lower-case hexadecimal; null for a plan built in C#.</summary>
    [JsonIgnore] public string? Sha256 { get; init; }
    /// <summary>What <c>check</c> holds the replay against.</summary>
    public IReadOnlyList<ExpectPlan> Expect { get; init; } = [];
}
