using MonitorSim.Motion.Envelopes;

namespace MonitorSim.Cli;

/// <summary>Stops and envelopes as CSV files for spreadsheets: SI, one row a stop, a fault, or a limit that a fault passed.</summary>
internal static class StopCsv
{
    public static void Write(Terminal terminal, IReadOnlyList<LimitStop> stops, IReadOnlyList<EnvelopeResult> envelopes, string folder)
    {
        if (envelopes.Count == 0)
        {
            ResultCsv.Table(terminal, Path.Combine(folder, "stops.csv"), ["axis", "from", "reaction", "velocity", "time_s", "distance", "peakSpeed", "energy_J", "fall", "drop", "detectedAt_s", "actedAt_s", "torqueOffAt_s", "brakedAt_s"],
                stops.Select(s => new object?[] { s.Axis, s.From, Explain.UserUnits.Reaction(s.Reaction), s.Speed.Si, s.Result.Time, s.Result.Distance, s.Result.PeakSpeed, s.Result.Energy, s.Result.Fall, s.Result.Drop,
                    s.Result.DetectedAt, s.Result.ActedAt, s.Result.OffAt, s.Result.BrakedAt }));
            return;
        }

        ResultCsv.Table(terminal, Path.Combine(folder, "envelope.csv"), ["axis", "sample", "at_s", "direction", "velocity", "time_s", "distance", "peakSpeed", "energy_J", "fall", "drop", "monitor", "side", "detectedAt_s", "actedAt_s", "torqueOffAt_s", "brakedAt_s"],
            envelopes.SelectMany(e => e.Points.Select(p => new object?[] { e.Axis, p.Sample, p.At, p.Direction, p.Velocity, p.Time, p.Distance, p.PeakSpeed, p.Energy, p.Fall, p.Drop, p.Monitor, p.Side, p.DetectedAt, p.ActedAt, p.OffAt, p.BrakedAt })));
        ResultCsv.Table(terminal, Path.Combine(folder, "overruns.csv"), ["axis", "sample", "at_s", "monitor", "side", "amount", "unit"],
            envelopes.SelectMany(e => e.Points.SelectMany(p => p.Overruns.Select(o => new object?[] { e.Axis, p.Sample, p.At, o.Monitor, o.Side, o.Amount, o.Unit }))));
    }
}
