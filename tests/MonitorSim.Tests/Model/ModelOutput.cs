using System.Text.Json;

namespace MonitorSim.Tests.Model;

/// <summary>An output with hysteresis and delays.</summary>
/// <param name="turnsOn">Whether its condition holds with the hysteresis to spare at a sample.</param>
/// <param name="holds">Whether it holds at all.</param>
/// <param name="onDelay">ns.</param>
/// <param name="offDelay">ns.</param>
internal sealed class ModelOutput(Func<int, bool> turnsOn, Func<int, bool> holds, long onDelay, long offDelay)
{
    private long? _since;

    public bool IsOn { get; private set; }

    public List<(long Time, bool IsOn)> Edges { get; } = [];

    public void Step(long time, int sample, bool isAllowed)
    {
        if (!isAllowed)
        {
            _since = null;
            Set(time, false);
            return;
        }

        var wantsChange = IsOn ? !holds(sample) : turnsOn(sample);
        if (!wantsChange)
        {
            _since = null;
            return;
        }

        _since ??= time;
        if (time - _since < (IsOn ? offDelay : onDelay)) return;
        _since = null;
        Set(time, !IsOn);
    }

    public void Set(long time, bool isOn)
    {
        if (isOn == IsOn) return;
        IsOn = isOn;
        if (Edges.Count > 0 && Edges[^1].Time == time) Edges.RemoveAt(Edges.Count - 1);
        else Edges.Add((time, isOn));
    }

    public static ModelOutput? Of(JsonElement plan, ModelChannels channels, ModelFunctions functions)
    {
        var h = plan.Quantity("hysteresis") ?? Fraction.Zero;
        (Func<int, Fraction, bool> Holds, string Function) condition = plan.Text("function") switch
        {
            "SCA" => (Areas(plan, channels), "SCA"),
            "SSM" => (Speeds(plan, channels, functions), "SSM"),
            "SMT" => ((k, spare) => channels["temperature"].First[k] is { } t && t <= plan.Quantity("limit")!.Value - spare, "SMT"),
            _ => default,
        };
        if (condition.Holds is null) return null;
        return new(k => condition.Holds(k, h), k => condition.Holds(k, Fraction.Zero), plan.Time("onDelay"), plan.Time("offDelay"));
    }

    private static Func<int, Fraction, bool> Areas(JsonElement plan, ModelChannels channels)
    {
        var ranges = plan.Field("ranges")!.Value.EnumerateArray().Select(r => (Low: ModelUnits.Parse(r[0].GetString()!), High: ModelUnits.Parse(r[1].GetString()!))).ToList();
        var position = channels["position"].First;
        return (k, spare) => position[k] is { } p && ranges.Any(range =>
        {
            var near = channels.Modulo is { } modulo ? ModelFunctions.Nearest(p, (range.Low + range.High) / 2, modulo) : p;
            return range.Low + spare <= near && near <= range.High - spare;
        });
    }

    private static Func<int, Fraction, bool> Speeds(JsonElement plan, ModelChannels channels, ModelFunctions functions)
    {
        var (lower, upper, isSigned) = (plan.Quantity("lower"), plan.Quantity("upper"), plan.Flag("signed"));
        return (k, spare) =>
        {
            var (least, most) = isSigned ? (channels["velocity"].First[k], channels["velocity"].First[k]) : (functions.Smaller("velocity", k), functions.Larger("velocity", k));
            return least is { } v && most is { } w && (lower is not { } lo || v >= lo + spare) && (upper is not { } hi || w <= hi - spare);
        };
    }
}
