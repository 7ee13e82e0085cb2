using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Explain;

/// <summary>What a plan says about one monitor, stop or pair of recordings, as far as sentences need it.</summary>
/// <param name="plan">The plan.</param>
/// <param name="axis">The axis.</param>
/// <param name="name">The monitor's name, or that of a stop, or <c>… two channels</c>.</param>
internal sealed class MonitorFacts(Plan plan, string axis, string name)
{
    private readonly AxisPlan? _axis = plan.Axes.GetValueOrDefault(axis);

    /// <summary>The monitor; null for stops and two channels, whose names are reserved.</summary>
    public MonitorPlan? Monitor => _axis?.Monitors.FirstOrDefault(monitor => monitor.Name == name);

    public bool IsTwoChannels => Monitor is null && name.EndsWith(" two channels", StringComparison.Ordinal);

    public bool IsStop => Monitor is null && !IsTwoChannels;

    public string Function => Monitor?.Function ?? (IsTwoChannels ? "two channels" : name);

    /// <summary>As people say it: axis, name and function.</summary>
    public string Spoken => $"{axis}, {name}{(Monitor is { } monitor && monitor.Function != name ? $" ({monitor.Function})" : "")}";

    /// <summary>How long an exceedance may last; null where the plan says none or there is no such parameter.</summary>
    public Quantity? Filter(string side) => Monitor?.Filter ?? (IsTwoChannels ? Second?.Time : side == "deceleration" ? Ramp?.Filter : null);

    /// <summary>What it waits for before it watches; null where the plan says nothing.</summary>
    public Quantity? Delay => Monitor is { } monitor ? monitor.Delay : name switch
    {
        "STO" => _axis?.Stops.Sto?.Grace,
        "SBC" => _axis?.Stops.Sbc?.Apply,
        _ => Ramp?.Delay,
    };

    /// <summary>The ramp that a side is measured from, such as <c>400 mm/s² after 40 ms</c>; null where there is none.</summary>
    public string? RampText(string side) => (Monitor, side) switch
    {
        (Sls { Approach: { } approach }, "approach") => approach.Deceleration.ToString(),
        (null, "ramp") => Ramp?.Delay is { Nanoseconds: > 0 } delay ? $"{Ramp.Deceleration} after {delay}" : Ramp?.Deceleration?.ToString(),
        _ => null,
    };

    /// <summary>How a rate was derived, such as <c>derived from velocity by difference</c>; null where it was recorded.</summary>
    /// <param name="kind">Velocity or acceleration.</param>
    public string? Derived(Kind kind)
    {
        var (channel, from) = kind == Kind.Acceleration ? (_axis?.Channels.Acceleration, "velocity") : (_axis?.Channels.Velocity, "position");
        return channel?.Column is null ? $"derived from {from} by {Choice.Name((channel?.Estimator ?? new()).Name)}" : null;
    }

    /// <summary>What the plan calls the filter of a side; null where it has none.</summary>
    public string? FilterName(string side) => IsTwoChannels ? "time" : IsStop && side != "deceleration" ? null : "filter";

    /// <summary>What the plan calls the delay; null where it has none.</summary>
    public string? DelayName => IsTwoChannels ? null : !IsStop ? "delay" : name switch
    {
        "STO" => "grace",
        "SBC" => "apply time",
        _ => Ramp?.Variant == StopVariant.Deceleration ? "delay" : null,
    };

    /// <summary>The condition of a level of SLS, as written.</summary>
    public string? LevelCondition(int level) => Levels is { } levels && level < levels.Count ? levels[level].When.Text : null;

    /// <summary>The levels of SLS; null where there are none.</summary>
    public IReadOnlyList<SpeedLevel>? Levels => (Monitor as Sls)?.Levels;

    /// <summary>Whether the stop only waits for its time.</summary>
    public bool IsByTime => IsStop && Ramp?.Variant == StopVariant.Time;

    /// <summary>What asks for it, as written; null where nothing does: a monitor is then always watched, a stop only demanded by others.</summary>
    public string? RequestText => (Monitor is { } monitor ? monitor.Request : name switch
    {
        "STO" => _axis?.Stops.Sto?.Request,
        "SOS" => _axis?.Stops.Sos?.Request,
        _ => Ramp?.Request,
    })?.Text;

    private RampStopPlan? Ramp => name switch { "SS1" => _axis?.Stops.Ss1, "SS2" => _axis?.Stops.Ss2, _ => null };

    private SecondChannelPlan? Second => name.Split(' ')[0] switch
    {
        "position" => _axis?.Channels.Position?.Second,
        "velocity" => _axis?.Channels.Velocity?.Second,
        "acceleration" => _axis?.Channels.Acceleration?.Second,
        "torque" => _axis?.Channels.Torque?.Second,
        "temperature" => _axis?.Channels.Temperature?.Second,
        _ => null,
    };
}
