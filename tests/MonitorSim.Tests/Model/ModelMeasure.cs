using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>A cycle as a measure sees it.</summary>
/// <param name="Index">The cycle, from 0.</param>
/// <param name="Time">Its time, ns.</param>
/// <param name="Sample">The sample that it sees.</param>
/// <param name="AskedAt">The time at which the request came, ns.</param>
/// <param name="IsWatching">Whether the arming delay is over.</param>
/// <param name="Chosen">The level that is asked for; 0 where there are none.</param>
/// <param name="Delay">The arming delay, ns.</param>
internal readonly record struct ModelMoment(int Index, long Time, int Sample, long AskedAt, bool IsWatching, int Chosen, long Delay);

/// <summary>What one side compares at a cycle.</summary>
/// <param name="X">The measure; more than the limit exceeds.</param>
/// <param name="Limit">The limit.</param>
/// <param name="Level">The level in force.</param>
internal readonly record struct Compared(Fraction X, Fraction Limit, int? Level);

/// <summary>One side of a monitor.</summary>
/// <param name="Name">As it stands in results.</param>
/// <param name="Limit">Its limit, in the sense of the measure; of levels see there.</param>
/// <param name="Unit">The SI unit.</param>
/// <param name="IsMirrored">Whether people see the measure's opposite (lower sides, decelerations of stops).</param>
internal sealed record ModelSide(string Name, Fraction Limit, string Unit, bool IsMirrored = false);

/// <summary>What a function measures in one stretch of request, from the cycle of the request on; called once for every cycle of the stretch.</summary>
internal abstract class ModelMeasure
{
    /// <summary>What each side compares at this cycle; null where it does not.</summary>
    public abstract Compared?[] Step(ModelMoment now);
}

/// <summary>Compares values of the cycle alone, while watching.</summary>
internal sealed class InstantMeasure(IReadOnlyList<ModelSide> sides, Func<int, Fraction?>[] values) : ModelMeasure
{
    public override Compared?[] Step(ModelMoment now) =>
        [.. sides.Zip(values, (side, value) => now.IsWatching && value(now.Sample) is { } x ? new Compared(x, side.Limit, null) : (Compared?)null)];
}

/// <summary>SDI: motion against the permitted direction, from the furthest position or from the start.</summary>
internal sealed class DirectionMeasure(ModelSide side, Fraction?[] position, bool isPositive, bool isFromStart) : ModelMeasure
{
    private Fraction? _reference;

    public override Compared?[] Step(ModelMoment now)
    {
        if (!now.IsWatching || position[now.Sample] is not { } p) return [null];
        var along = isPositive ? p : -p;
        if (_reference is null || !isFromStart && along > _reference.Value) _reference = along;
        return [new(_reference.Value - along, side.Limit, null)];
    }
}

/// <summary>SOS: the distance from the first position, and the speed.</summary>
internal sealed class HoldMeasure(IReadOnlyList<ModelSide> sides, Fraction?[] position, Func<int, Fraction?> speed) : ModelMeasure
{
    private Fraction? _start;

    public override Compared?[] Step(ModelMoment now)
    {
        var compared = new Compared?[sides.Count];
        if (!now.IsWatching) return compared;
        if (position[now.Sample] is { } p)
        {
            _start ??= p;
            compared[0] = new((p - _start.Value).Abs, sides[0].Limit, null);
        }

        if (sides.Count > 1 && speed(now.Sample) is { } v) compared[1] = new(v, sides[1].Limit, null);
        return compared;
    }
}

/// <summary>SLI: the increment while moving, then the window around where the move ended.</summary>
internal sealed class IncrementMeasure(IReadOnlyList<ModelSide> sides, Fraction?[] position, long? moveTime) : ModelMeasure
{
    private Fraction? _start, _held;
    private long? _watchingAt;

    public override Compared?[] Step(ModelMoment now)
    {
        var compared = new Compared?[sides.Count];
        if (!now.IsWatching) return compared;
        _watchingAt ??= now.Time;
        if (position[now.Sample] is not { } p) return compared;
        _start ??= p;
        if (moveTime is null || now.Time - _watchingAt < moveTime)
        {
            compared[0] = new((p - _start.Value).Abs, sides[0].Limit, null);
        }
        else if (sides.Count > 1)
        {
            _held ??= p;
            compared[1] = new((p - _held.Value).Abs, sides[1].Limit, null);
        }

        return compared;
    }
}
