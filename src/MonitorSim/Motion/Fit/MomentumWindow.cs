namespace MonitorSim.Motion.Fit;

/// <summary>The balance of momentum over a short window, weighted by a bump: mean torque = M·mean acceleration + b·mean speed + Tc·direction + offset.</summary>
/// <remarks>
/// Torque is fitted against acceleration; but accelerations derived from a recorded speed are mostly noise, and noise in what is fitted against makes every
/// inertia come out too small. Over each interval between samples the balance ∫q dt = M·Δv + b·∫v dt + Tc·∫sgn v dt + offset·Δt needs no acceleration; summed with
/// a weight w(τ) = τ·(1 - τ), 0 &lt;= τ &lt;= 1, that vanishes at the window's ends, it uses all speeds in it and not only the first and last: Σ w·Δv/Σ w·Δt is the
/// slope of a straight line through them by least squares. (Modulating functions, M. Shinbrot 1957, from memory.)
/// </remarks>
/// <param name="First">Its first sample.</param>
/// <param name="Time">Its middle, s.</param>
/// <param name="Torque">Weighted mean, N or N·m.</param>
/// <param name="Acceleration">Weighted mean, m/s² or rad/s².</param>
/// <param name="Velocity">Weighted mean, m/s or rad/s.</param>
/// <param name="Direction">1 or -1.</param>
/// <param name="AccelerationNoise">The variance of the acceleration for a noise of the speed of variance 1.</param>
internal readonly record struct MomentumWindow(int First, double Time, double Torque, double Acceleration, double Velocity, double Direction, double AccelerationNoise)
{
    /// <summary>Cuts stretches that move one way without a gap into windows of a number of samples.</summary>
    public static List<MomentumWindow> Cut(FitData data, IReadOnlyList<(int From, int Until)> stretches, int samples)
    {
        var windows = new List<MomentumWindow>();
        foreach (var (from, until) in stretches)
            for (var first = from; first + samples <= until; first += samples) windows.Add(Of(data, first, samples));
        return windows;
    }

    private static MomentumWindow Of(FitData data, int first, int samples)
    {
        var (times, v, q) = (data.Times, data.Velocity, data.Torque!);
        double start = times[first], length = times[first + samples - 1] - start;
        double weights = 0, torque = 0, change = 0, way = 0, noise = 0, before = 0;
        for (var k = first; k < first + samples; k++)
        {
            var weight = 0.0;
            if (k + 1 < first + samples)
            {
                var (step, middle) = ((times[k + 1] - times[k]) / 1e9, ((times[k + 1] + (double)times[k]) / 2 - start) / length);
                weight = middle * (1 - middle);
                weights += weight * step;
                torque += weight * step * (q[k] + q[k + 1]) / 2;
                way += weight * step * (v[k] + v[k + 1]) / 2;
                change += weight * (v[k + 1] - v[k]);
            }

            noise += (before - weight) * (before - weight);
            before = weight;
        }

        return new(first, (start + length / 2) / 1e9, torque / weights, change / weights, way / weights, Math.Sign(way), noise / weights / weights);
    }

    /// <summary>The stretches of at least three samples that move one way faster than a threshold, without gaps.</summary>
    public static List<(int From, int Until)> Stretches(FitData data, int from, int until, double threshold)
    {
        var stretches = new List<(int From, int Until)>();
        var start = from;
        for (var k = from; k <= until; k++)
        {
            var goesOn = k < until && IsMoving(k) && (k == start || (data.Follows(k) && Math.Sign(data.Velocity[k]) == Math.Sign(data.Velocity[start])));
            if (goesOn) continue;
            if (k - start >= 3) stretches.Add((start, k));
            start = k < until && IsMoving(k) ? k : k + 1;
        }

        return stretches;

        bool IsMoving(int k) => data.Has(k) && Math.Abs(data.Velocity[k]) > threshold;
    }
}
