using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion.Fit;

/// <summary>Friction from a coast-down: least squares on the recorded speed with the closed form, by Gauss and Newton's steps.</summary>
/// <remarks>Only the speed is needed, and its noise is in what is fitted, not in what is fitted against: no bias. A coast-down tells ratios to the inertia only; and, as it
/// moves one way, Coulomb friction together with the load.</remarks>
internal sealed class CoastDownFit(FitData data, FitOptions options, CancellationToken cancel)
{
    private const int FewestSamples = 12;
    private const int MostSteps = 100;

    /// <param name="trace">What the recording is called.</param>
    /// <param name="from">The sample at which the torque is off.</param>
    /// <param name="until">The first sample that is not part of it.</param>
    public FitResult Run(string trace, int from, int until)
    {
        var threshold = data.Threshold(options);
        var direction = from < until ? Math.Sign(data.Velocity[from]) : 0;
        var samples = Enumerable.Range(from, Math.Max(0, until - from)).TakeWhile(k => !data.Has(k) || data.Velocity[k] * direction > threshold).Where(data.Has).ToArray();
        if (samples.Length < FewestSamples)
        {
            throw new InputException(new Problem(data.Axis,
                FormattableString.Invariant($"only {samples.Length} samples coast faster than {SpeedUnit.Format(threshold)}; {FewestSamples} are needed"), "give the stretch with \"from\" and \"until\", or a lower speed with \"above\""));
        }

        double[] times = [.. samples.Select(k => (data.Times[k] - data.Times[samples[0]]) / 1e9)];
        double[] speeds = [.. samples.Select(k => data.Velocity[k] * direction)];
        var (model, fit) = Solve(times, speeds);
        double[] residuals = [.. times.Select((t, i) => speeds[i] - model.At(t))];
        var noise = new ResidualNoise(residuals, _ => true, 3);
        var parameters = Parameters(model, fit, noise);
        List<string> warnings = [.. FitWarnings.Of(parameters, fit, noise)];
        warnings.Add("a coast-down moves one way: coulomb is friction less the load in the direction of motion");
        if (options.Inertia is null) warnings.Add($"a coast-down tells ratios only: give the {data.InertiaName} to get viscous and coulomb themselves");
        return new()
        {
            Axis = data.Axis,
            Trace = trace,
            Method = FitMethod.CoastDown,
            From = data.Times[samples[0]] / 1e9,
            Until = data.Times[samples[^1]] / 1e9,
            Samples = samples.Length,
            Equations = samples.Length,
            Window = 0,
            Parameters = parameters,
            Residuals = new(noise.Rms, noise.Max, Math.Sqrt(speeds.Average(v => v * v)), noise.Neighbours, SpeedUnit.Symbol),
            Condition = fit.Condition,
            Warnings = warnings,
            Plant = FittedPlant.Of(data, parameters, options.Inertia, warnings),
            Points = [.. samples.Select((k, i) => new FitPoint(data.Times[k] / 1e9, direction * speeds[i], direction * model.At(times[i])))],
        };
    }

    private Unit SpeedUnit => Unit.Parse(data.IsRotary ? "rad/s" : "m/s");

    private (CoastDownModel Model, LeastSquares Fit) Solve(double[] times, double[] speeds)
    {
        var model = Guess(times, speeds);
        var error = Error(model);
        for (var step = 0; ; step++)
        {
            cancel.ThrowIfCancellationRequested();
            var fit = Linear(times, model, i => speeds[i] - model.At(times[i]));
            if (step == MostSteps) return (model, fit);

            // A step that makes it worse is halved: far from the answer the tangent leads too far.
            var (next, size) = (model, 1.0);
            do
            {
                next = new(model.Start + size * fit.Solution[0], model.Viscous + size * fit.Solution[1], model.Coulomb + size * fit.Solution[2]);
                size /= 2;
            }
            while (!(Error(next) <= error) && size > 1e-6);
            if (!(Error(next) < error)) return (model, fit);
            var gain = error - Error(next);
            (model, error) = (next, Error(next));
            if (gain <= 1e-14 * error) return (model, Linear(times, next, i => speeds[i] - next.At(times[i])));
        }

        double Error(CoastDownModel of) => times.Select((t, i) => speeds[i] - of.At(t)).Sum(e => e * e);
    }

    /// <summary>The speed is linear in its own integral: u = u0 - k·∫u dt - c·t. Noise makes that a little wrong, but it is a beginning.</summary>
    private static CoastDownModel Guess(double[] times, double[] speeds)
    {
        var way = new double[times.Length];
        for (var i = 1; i < way.Length; i++) way[i] = way[i - 1] + (times[i] - times[i - 1]) * (speeds[i] + speeds[i - 1]) / 2;
        var fit = new LeastSquares([[.. times.Select(_ => 1.0)], [.. way.Select(s => -s)], [.. times.Select(t => -t)]], speeds);
        return new(fit.Solution[0], fit.Solution[1], fit.Solution[2]);
    }

    private static LeastSquares Linear(double[] times, CoastDownModel model, Func<int, double> residual)
    {
        var slopes = times.Select(model.SlopesAt).ToArray();
        return new([[.. slopes.Select(slope => slope.Start)], [.. slopes.Select(slope => slope.Viscous)], [.. slopes.Select(slope => slope.Coulomb)]],
            [.. times.Select((_, i) => residual(i))]);
    }

    private List<FittedParameter> Parameters(CoastDownModel model, LeastSquares fit, ResidualNoise noise)
    {
        var start = noise.Parameter("speed at the beginning", model.Start, fit.Variance(0), SpeedUnit.Symbol);
        if (options.Inertia is not { } inertia)
        {
            return
            [
                start, noise.Parameter($"viscous/{data.InertiaName}", model.Viscous, fit.Variance(1), "1/s"),
                noise.Parameter($"coulomb/{data.InertiaName}", model.Coulomb, fit.Variance(2), data.IsRotary ? "rad/s²" : "m/s²"),
            ];
        }

        var (j, force, viscous) = (inertia.Si, data.IsRotary ? "N·m" : "N", data.IsRotary ? "N·m·s/rad" : "N·s/m");
        return [start, noise.Parameter("viscous", j * model.Viscous, j * j * fit.Variance(1), viscous), noise.Parameter("coulomb", j * model.Coulomb, j * j * fit.Variance(2), force)];
    }
}
