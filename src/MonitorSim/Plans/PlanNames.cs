namespace MonitorSim.Plans;

/// <summary>The names that expressions and expect lines can refer to.</summary>
internal sealed class PlanNames
{
    private const string TwoChannels = " two channels";
    private static readonly string[] StopNames = ["STO", "SS1", "SS2", "SOS", "SBC"];
    private static readonly string[] ReservedWords = [.. StopNames, "state", "always", "never"];

    private readonly Dictionary<string, IReadOnlyCollection<string>> _monitors = new(StringComparer.Ordinal);

    public PlanNames(Plan plan)
    {
        Signals = [.. plan.Signals.Keys];
        foreach (var (name, axis) in plan.Axes)
        {
            if (axis is null) continue;
            var channels = ChannelChecks.Of(axis).Where(channel => channel.Plan?.Second is not null).Select(channel => Choice.Name(channel.Kind) + TwoChannels);
            var stops = StopNames.Where(stop => IsDefined(axis, stop));
            _monitors.Add(name, [.. axis.Monitors.Where(monitor => monitor?.Name is not null).Select(monitor => monitor.Name), .. stops, .. channels]);
        }
    }

    public IReadOnlyCollection<string> Signals { get; }

    public IReadOnlyCollection<string> Axes => _monitors.Keys;

    /// <summary>Whether a monitor may not have the name, because the axis has something of that name itself.</summary>
    public static bool IsReserved(string name) => ReservedWords.Contains(name, StringComparer.Ordinal) || name.EndsWith(TwoChannels, StringComparison.Ordinal);

    /// <summary>Monitors, defined stops and compared channels of an axis; null without the axis.</summary>
    public IReadOnlyCollection<string>? Of(string axis) => _monitors.GetValueOrDefault(axis);

    public static bool IsDefined(AxisPlan axis, string stop) => PlanType.Of(typeof(StopsPlan)).Find(stop)!.Get(axis.Stops) is not null;
}
