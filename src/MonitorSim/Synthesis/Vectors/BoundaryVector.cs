using System.Text;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Synthesis.Vectors;

/// <summary>A synthetic recording that meets branches of a plan, and what must come of it.</summary>
public sealed record BoundaryVector
{
    /// <summary>A name that is also fit for a folder.</summary>
    public required string Name { get; init; }
    /// <summary>What happens and what must come of it.</summary>
    public required string Says { get; init; }
    /// <summary>The user's plan with what reads and holds this recording: its <c>trace</c> and its <c>expect</c> lines.</summary>
    public required Plan Plan { get; init; }
    /// <summary>The recording as a CSV file, UTF-8.</summary>
    public required string Csv { get; init; }
    /// <summary>The branches that it meets.</summary>
    public required IReadOnlyList<Branch> Meets { get; init; }
    /// <summary>What must come of it.</summary>
    public required ReplayResult Expected { get; init; }

    /// <summary>How another replay differs from what must come of it: trips with axis, monitor, side, level and time; states; outputs. Empty where it does not.</summary>
    /// <param name="found">The other replay.</param>
    public IReadOnlyList<string> Differences(ReplayResult found) => [.. VectorOutcome.Differences(VectorOutcome.Of(Expected), VectorOutcome.Of(found))];

    /// <summary>The recording as bytes.</summary>
    internal byte[] Bytes => Encoding.UTF8.GetBytes(Csv);
}

/// <summary>All boundary vectors of a plan.</summary>
/// <param name="Vectors">The vectors.</param>
/// <param name="Missed">The branches that no vector meets, and why.</param>
/// <param name="Failed">Vectors of which no way to make them came out as meant when replayed: errors of this library, not of the plan. Their branches are missed.</param>
/// <param name="Period">From sample to sample and from cycle to cycle.</param>
/// <param name="Notes">What their reader should know.</param>
public sealed record VectorSet(IReadOnlyList<BoundaryVector> Vectors, IReadOnlyList<MissedBranch> Missed, IReadOnlyList<string> Failed, Quantity Period, IReadOnlyList<string> Notes)
{
    /// <summary>How many branches are met.</summary>
    public int Met => Vectors.SelectMany(vector => vector.Meets).Distinct().Count();

    /// <summary>How many branches there are.</summary>
    public int Total => Met + Missed.Count;
}
