namespace MonitorSim.Tests.Model;

/// <summary>SLS with levels and approach (also without): the laxest level in force, and the way down to a stricter one.</summary>
/// <param name="limits">The limit of each level; one where there are none.</param>
/// <param name="isLevelled">Whether results name the level.</param>
/// <param name="speed">The speed for upper limits.</param>
/// <param name="approach">Deceleration and tolerance, or null.</param>
internal sealed class LevelMeasure(IReadOnlyList<Fraction> limits, bool isLevelled, Func<int, Fraction?> speed, (Fraction Deceleration, Fraction Tolerance)? approach)
    : ModelMeasure
{
    // Levels given up for a stricter one, and when; the latest last.
    private readonly List<(int Level, long At)> _givenUp = [];
    private int? _chosen;
    private long _chosenAt;
    private Fraction? _speedThen;

    public override Compared?[] Step(ModelMoment now)
    {
        var v = speed(now.Sample);
        if (now.Chosen != _chosen)
        {
            if (_chosen is { } before && limits[now.Chosen] < limits[before])
            {
                _givenUp.RemoveAll(g => g.Level == before);
                _givenUp.Add((before, now.Time));
            }

            (_chosen, _chosenAt, _speedThen) = (now.Chosen, now.Time, v);
        }

        _givenUp.RemoveAll(g => now.Time - g.At >= now.Delay);
        var inForce = now.Chosen;
        foreach (var (level, _) in Enumerable.Reverse(_givenUp))
            if (limits[level] > limits[inForce]) inForce = level;

        var compared = new Compared?[approach is null ? 1 : 2];
        if (now.IsWatching && v is { } speedNow) compared[0] = new(speedNow, limits[inForce], isLevelled ? inForce : null);
        var isComing = !now.IsWatching || limits[inForce] > limits[now.Chosen];
        if (approach is { } way && isComing && v is { } x && _speedThen is { } v0 && x > limits[now.Chosen])
            compared[1] = new(x - (v0 - way.Deceleration * (now.Time - _chosenAt) / 1_000_000_000), way.Tolerance, null);
        return compared;
    }
}
