namespace MonitorSim.Synthesis;

/// <summary>From rest to rest over a distance within limits of speed, acceleration and jerk, in the shortest time: up to seven phases whose
/// durations are known in closed form.</summary>
/// <remarks>With jerk time J and ramp time A (from rest to the peak speed) the peak acceleration is j·J, the peak speed j·J·(A - J), and the
/// distance peak·(A + cruise). Which limits are reached decides which of these is given and which is solved for.</remarks>
/// <param name="JerkTime">How long the jerk lasts in each of its four (or eight) turns, s; 0 where the jerk has no limit.</param>
/// <param name="RampTime">From rest to the peak speed, s.</param>
/// <param name="CruiseTime">At the peak speed, s.</param>
internal readonly record struct JerkLimitedMove(decimal JerkTime, decimal RampTime, decimal CruiseTime)
{
    /// <summary>The times of the fastest move.</summary>
    /// <param name="distance">&gt; 0.</param>
    /// <param name="speed">The largest speed, &gt; 0.</param>
    /// <param name="acceleration">The largest acceleration, &gt; 0.</param>
    /// <param name="jerk">The largest jerk, &gt; 0; null: no limit.</param>
    public static JerkLimitedMove Over(decimal distance, decimal speed, decimal acceleration, decimal? jerk)
    {
        var (jerkTime, rampTime) = ToSpeed(speed, acceleration, jerk);

        // Speeding up and slowing down cover the peak speed times the ramp time together.
        if (distance / speed - rampTime is var cruise and >= 0) return new(jerkTime, rampTime, cruise);
        (jerkTime, rampTime) = WithoutCruise(distance, acceleration, jerk);
        return new(jerkTime, rampTime, 0);
    }

    private static (decimal JerkTime, decimal RampTime) ToSpeed(decimal speed, decimal acceleration, decimal? jerk)
    {
        if (jerk is not { } j) return (0, speed / acceleration);
        if (speed < acceleration / j * acceleration) return DecimalRoots.Square(speed / j) is var time ? (time, 2 * time) : default;
        return (acceleration / j, acceleration / j + speed / acceleration);
    }

    private static (decimal JerkTime, decimal RampTime) WithoutCruise(decimal distance, decimal acceleration, decimal? jerk)
    {
        if (jerk is not { } j) return (0, DecimalRoots.Square(distance / acceleration));
        var jerkTime = acceleration / j;

        // The peak speed v that solves v·(J + v/a) = distance, where the acceleration has time to reach its limit.
        if (distance >= 2 * acceleration * jerkTime * jerkTime)
            return (jerkTime, (jerkTime + DecimalRoots.Square(jerkTime * jerkTime + 4 * distance / acceleration)) / 2);
        return DecimalRoots.Cube(distance / (2 * j)) is var time ? (time, 2 * time) : default;
    }

    /// <summary>Goes on with this move; ends exactly at the distance, at rest.</summary>
    /// <param name="before">At rest.</param>
    /// <param name="distance">With its sign.</param>
    /// <param name="acceleration">The limit, for moves whose jerk has none.</param>
    /// <param name="jerk">The limit, or null.</param>
    public Motion After(Motion before, decimal distance, decimal acceleration, decimal? jerk)
    {
        var sign = Math.Sign(distance);
        var j = sign * (jerk ?? 0);
        var peak = jerk is null ? sign * acceleration : j * JerkTime;
        var steady = RampTime - 2 * JerkTime;
        return before
            .Then(JerkTime, 0, j).Then(steady, peak).Then(JerkTime, peak, -j)
            .Then(CruiseTime)
            .Then(JerkTime, 0, -j).Then(steady, -peak).Then(JerkTime, -peak, j)
            .EndingAt(before.Position + distance, 0);
    }
}
