using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Fit;

/// <summary>Plant parameters from a move with torque: q = M·a + b·v + Tc·sgn v - load, by linear least squares over windows; or with friction that differs by direction,
/// q = M·a + b₊·v + T₊ forward and q = M·a + b₋·v - T₋ backward, T₊ being Tc₊ - load and T₋ being Tc₋ + load.</summary>
/// <remarks>Windows are disjoint, so that noise of torque and speed makes residuals that know nothing of one another. They are made as short as the noise of the speed
/// permits: lengthened until the bias that it causes in the inertia (its share of the acceleration's variance that nothing else explains) is below a tenth of the
/// standard error.</remarks>
internal sealed class MoveFit(FitData data, FitOptions options, CancellationToken cancel)
{
    private const int ShortestWindow = 8;
    private const int FewestWindows = 24;

    private readonly List<string> _warnings = [];

    public FitResult Run(string trace)
    {
        var (from, until) = (data.AtOrAfter(options.From?.Nanoseconds ?? 0), options.Until is { } end ? data.AtOrAfter(end.Nanoseconds) : data.Times.Length);
        var threshold = data.Threshold(options);
        var stretches = MomentumWindow.Stretches(data, from, until, threshold);
        var (windows, samples, fit, columns) = Solve(stretches);
        var residuals = fit.Residuals;
        var noise = new ResidualNoise(residuals, k => windows[k].First == windows[k - 1].First + samples, columns.Count);
        List<FittedParameter> parameters = [.. columns.Select((column, i) => noise.Parameter(column.Name, column.Sign * fit.Solution[i], fit.Variance(i), column.Unit))];
        _warnings.AddRange(FitWarnings.Of(parameters, fit, noise));
        if (options.Asymmetric) _warnings.Add("friction by direction cannot be told from a load: coulomb forward is less the load, coulomb backward plus it");
        if (data.IsDerived) _warnings.Add("the speed is derived from the position and comes late, which mixes the parameters a little: a recorded speed is better");
        var torques = windows.Select(window => window.Torque).ToArray();
        return new()
        {
            Axis = data.Axis,
            Trace = trace,
            Method = FitMethod.Move,
            From = data.Times[stretches[0].From] / 1e9,
            Until = data.Times[stretches[^1].Until - 1] / 1e9,
            Samples = windows.Count * samples,
            Equations = windows.Count,
            Window = (data.Times[windows[0].First + samples - 1] - data.Times[windows[0].First]) / 1e9,
            Parameters = parameters,
            Residuals = new(noise.Rms, noise.Max, Math.Sqrt(torques.Average(q => q * q)), noise.Neighbours, data.IsRotary ? "N·m" : "N"),
            Condition = fit.Condition,
            Warnings = _warnings,
            Plant = options.Asymmetric ? null : FittedPlant.Of(data, parameters, options.Inertia, _warnings),
            Points = [.. windows.Select((window, k) => new FitPoint(window.Time, window.Torque, window.Torque - residuals[k]))],
        };
    }

    private sealed record Column(string Name, double Sign, string Unit, Func<MomentumWindow, double> Of);

    private (List<MomentumWindow> Windows, int Samples, LeastSquares Fit, List<Column> Columns) Solve(List<(int From, int Until)> stretches)
    {
        var samples = options.Window is { } given ? Samples(given) : ShortestWindow;
        var windows = MomentumWindow.Cut(data, stretches, samples);
        if (windows.Count < FewestWindows) throw TooLittle(windows.Count, samples);
        var (fit, columns) = Solve(windows);
        var speedNoise = SpeedNoise(stretches);
        while (Bias(windows, fit, columns, speedNoise) is var bias && bias > 0.1)
        {
            cancel.ThrowIfCancellationRequested();
            var longer = MomentumWindow.Cut(data, stretches, samples * 2);
            if (options.Window is not null || longer.Count < FewestWindows)
            {
                _warnings.Add(FormattableString.Invariant($"the noise of the speed makes the {data.InertiaName} too small by about {bias:0.#} standard errors: record for longer, or a less noisy speed"));
                break;
            }

            (windows, samples) = (longer, samples * 2);
            _warnings.Clear();
            (fit, columns) = Solve(windows);
        }

        return (windows, samples, fit, columns);
    }

    /// <summary>Fits what the recording can tell; of parameters that are the same to it all but one are left out.</summary>
    private (LeastSquares Fit, List<Column> Columns) Solve(List<MomentumWindow> windows)
    {
        var (force, viscous) = data.IsRotary ? ("N·m", "N·m·s/rad") : ("N", "N·s/m");
        List<Column> columns = [new(data.InertiaName, 1, data.IsRotary ? "kg·m²" : "kg", window => window.Acceleration)];
        columns.AddRange(options.Asymmetric
            ?
            [
                new("coulomb forward", 1, force, window => window.Direction > 0 ? 1 : 0), new("viscous forward", 1, viscous, window => Math.Max(0, window.Velocity)),
                new("coulomb backward", 1, force, window => window.Direction < 0 ? -1 : 0), new("viscous backward", 1, viscous, window => Math.Min(0, window.Velocity)),
            ]
            : [new("coulomb", 1, force, window => window.Direction), new("viscous", 1, viscous, window => window.Velocity), new("load", -1, force, _ => 1)]);
        double[] torque = [.. windows.Select(window => window.Torque)];
        while (true)
        {
            double[][] values = [.. columns.Select(column => windows.Select(column.Of).ToArray())];
            var fit = new LeastSquares(values, torque);
            if (fit.Condition < 1e8 || columns.Count == 1) return (fit, columns);
            List<Column> same = [.. columns.Where((_, i) => Math.Abs(fit.Weakest[i]) > 0.05)];
            _warnings.Add($"the recording cannot tell {FitWarnings.List(same.Select(column => column.Name))} apart: {same[^1].Name} is left out, and what it does is in the others");
            columns.Remove(same[^1]);
        }
    }

    /// <summary>The bias of the inertia that noise in the speed causes, in standard errors.</summary>
    private static double Bias(List<MomentumWindow> windows, LeastSquares fit, List<Column> columns, double speedNoise)
    {
        if (columns[0].Name is not ("mass" or "inertia")) return 0;
        var share = speedNoise * speedNoise * windows.Sum(window => window.AccelerationNoise) * fit.Variance(0);
        var error = Math.Sqrt(fit.Residuals.Sum(e => e * e) / (windows.Count - columns.Count) * fit.Variance(0));
        return Math.Abs(fit.Solution[0]) * share / error;
    }

    /// <summary>The standard deviation of white noise in the speed, from its second differences (variance 6 times that of the noise).</summary>
    private double SpeedNoise(List<(int From, int Until)> stretches)
    {
        var (sum, count) = (0.0, 0);
        foreach (var (from, until) in stretches)
        {
            for (var k = from + 1; k + 1 < until; k++)
            {
                var second = data.Velocity[k + 1] - 2 * data.Velocity[k] + data.Velocity[k - 1];
                (sum, count) = (sum + second * second, count + 1);
            }
        }

        return count == 0 ? 0 : Math.Sqrt(sum / count / 6);
    }

    private int Samples(Quantity window)
    {
        var median = (data.Times[^1] - data.Times[0]) / (double)Math.Max(1, data.Times.Length - 1);
        return Math.Max(3, (int)Math.Round(window.Nanoseconds / median) + 1);
    }

    private InputException TooLittle(int windows, int samples) => new(new Problem(data.Axis,
        FormattableString.Invariant($"only {windows} windows of {samples} samples move one way without a gap faster than {(data.IsRotary ? Unit.Parse("rad/s") : Unit.Parse("m/s")).Format(data.Threshold(options))}; {FewestWindows} are needed"),
        "give a longer stretch or a lower speed with \"above\""));
}
