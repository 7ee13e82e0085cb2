using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Traces;

namespace MonitorSim.Cli;

/// <summary>A plan to start from: one axis with the first column of each kind that is measured rather than asked for, every switch as a signal, no monitors yet.</summary>
internal static class PlanStart
{
    // What was asked for is no motion: by these words recordings tell it apart.
    private static readonly string[] AskedFor = ["ref", "reference", "set", "setpoint", "target", "cmd", "command", "commanded", "demand", "desired", "nominal", "error", "err"];

    public static Plan Of(TraceSurvey survey)
    {
        var numbers = survey.Columns.Where(column => column.Kind == ColumnKind.Number && column.Unit is not null)
            .Select(column => (column.Name, Unit: Unit.TryParse(column.Unit!, out var unit, out _) ? unit : null)).Where(column => column.Unit is not null).ToList();
        var rotary = !numbers.Any(c => IsOf(c.Unit!, Dimension.Metre)) && numbers.Any(c => IsOf(c.Unit!, Dimension.Radian));
        var way = rotary ? Dimension.Radian : Dimension.Metre;
        ChannelPlan? First(params Dimension[] dimensions) =>
            numbers.Where(c => dimensions.Contains(c.Unit!.Dimension)).OrderBy(c => IsAskedFor(c.Name)).FirstOrDefault() is { Unit: { } unit } found ? new() { Column = found.Name, Unit = unit } : null;
        var dialect = survey.Found.Dialect;
        return new()
        {
            Title = $"Started from {survey.Trace.Name}",
            Trace = new()
            {
                Time = dialect.TimeColumn is null ? null : new() { Column = dialect.TimeColumn, Unit = dialect.TimeUnit == "ISO 8601" ? null : dialect.TimeUnit },
                Delimiter = dialect.Delimiter?.ToString(),
                Decimal = dialect.Decimal?.ToString(),
            },
            Signals = survey.Columns.Where(column => column.IsSwitch && column.Unit is null).ToDictionary(column => column.Name, column => new SignalPlan { Column = column.Name }),
            Axes = new Dictionary<string, AxisPlan>
            {
                ["axis"] = new()
                {
                    Motion = rotary ? AxisMotion.Rotary : AxisMotion.Linear,
                    Channels = new()
                    {
                        Position = First(way),
                        Velocity = First(way / Dimension.Second),
                        Acceleration = First(way / Dimension.Second / Dimension.Second),
                        Torque = First(Dimension.NewtonMetre, Dimension.Newton),
                        Temperature = First(Dimension.Celsius),
                    },
                    Stops = new() { Sto = new(), Ss1 = new() { Variant = StopVariant.Time, Time = "1 s" } },
                },
            },
        };
    }

    private static bool IsAskedFor(string column) =>
        column.Split([' ', '_', '-', '.', '/', '[', '(', ':'], StringSplitOptions.RemoveEmptyEntries).Any(word => AskedFor.Contains(word, StringComparer.OrdinalIgnoreCase));

    private static bool IsOf(Unit unit, Dimension way) =>
        unit.Dimension == way || unit.Dimension == way / Dimension.Second || unit.Dimension == way / Dimension.Second / Dimension.Second;
}
