using MonitorSim.Explain;
using MonitorSim.Motion;
using MonitorSim.Motion.Envelopes;

namespace MonitorSim.Cli;

/// <summary>Stops and envelopes as tables: SI, one row a stop, a fault, or a limit that a fault passed.</summary>
internal static class StopSheets
{
    public static IReadOnlyList<Sheet> Of(IReadOnlyList<LimitStop> stops, IReadOnlyList<EnvelopeResult> envelopes) => envelopes.Count == 0
        ?
        [
            new Sheet<LimitStop>("stops", stops).Text("axis", s => s.Axis).Text("from", s => s.From).Text("reaction", s => UserUnits.Reaction(s.Reaction)).Number("velocity", s => s.Speed.Si)
                .Number("time_s", s => s.Result.Time).Number("distance", s => s.Result.Distance).Number("peakSpeed", s => s.Result.PeakSpeed).Number("energy_J", s => s.Result.Energy)
                .Number("fall", s => s.Result.Fall).Number("drop", s => s.Result.Drop).Number("detectedAt_s", s => s.Result.DetectedAt).Number("actedAt_s", s => s.Result.ActedAt)
                .Number("torqueOffAt_s", s => s.Result.OffAt).Number("brakedAt_s", s => s.Result.BrakedAt),
        ]
        :
        [
            new Sheet<(string Axis, EnvelopePoint At)>("envelope", envelopes.SelectMany(e => e.Points.Select(point => (e.Axis, point)))).Text("axis", p => p.Axis)
                .Count("sample", p => p.At.Sample).Seconds("at_s", p => p.At.At).Count("direction", p => p.At.Direction).Number("velocity", p => p.At.Velocity).Number("time_s", p => p.At.Time)
                .Number("distance", p => p.At.Distance).Number("peakSpeed", p => p.At.PeakSpeed).Number("energy_J", p => p.At.Energy).Number("fall", p => p.At.Fall).Number("drop", p => p.At.Drop)
                .Text("monitor", p => p.At.Monitor).Text("side", p => p.At.Side).Number("detectedAt_s", p => p.At.DetectedAt).Number("actedAt_s", p => p.At.ActedAt)
                .Number("torqueOffAt_s", p => p.At.OffAt).Number("brakedAt_s", p => p.At.BrakedAt),
            new Sheet<(string Axis, EnvelopePoint At, Overrun Past)>("overruns", envelopes.SelectMany(e => e.Points.SelectMany(point => point.Overruns.Select(past => (e.Axis, point, past)))))
                .Text("axis", p => p.Axis).Count("sample", p => p.At.Sample).Seconds("at_s", p => p.At.At).Text("monitor", p => p.Past.Monitor).Text("side", p => p.Past.Side)
                .Number("amount", p => p.Past.Amount).Text("unit", p => p.Past.Unit),
        ];
}
