using System.Globalization;
using System.Text.Json.Nodes;

namespace MonitorSim.Tests.Model;

/// <summary>A random axis: its channels and its stops; all stops are defined, so that everything may demand them.</summary>
internal sealed class RandomAxis
{
    private readonly Dice _dice;
    private readonly bool _isRotary;
    private readonly RandomTrace _trace;
    private readonly Dictionary<string, RandomChannel> _channels = [];

    public RandomAxis(Dice dice, RandomTrace trace, string name)
    {
        (_dice, _trace, _isRotary, Name) = (dice, trace, dice.Chance(50), name);
        var gear = dice.Pick(1, 2, 5);
        Plan["motion"] = _isRotary ? "rotary" : "linear";
        Plan["gear"] = $"{gear}:1";
        if (!_isRotary) Plan["feed"] = "20 mm/rev";
        var position = RandomWalks.Position(dice, trace.Count);
        var isModulo = _isRotary && dice.Chance(50);
        if (isModulo) position = [.. position.Select(x => (x % 24 + 24) % 24)];
        Record("position", position, gear);
        if (isModulo)
        {
            Modulo = 24 * _channels["position"].Grid;
            Plan["modulo"] = RandomChannel.Quantity(Modulo.Value, "deg");
        }

        if (dice.Chance(60)) Record("velocity", RandomWalks.Speed(dice, trace.Count), gear);
        else Derive("velocity", "position", _isRotary ? "deg/s" : "mm/s");
        if (dice.Chance(60)) Record("acceleration", RandomWalks.Speed(dice, trace.Count), gear);
        else Derive("acceleration", "velocity", AccelerationUnit());
        if (dice.Chance(75)) Record("torque", RandomWalks.Speed(dice, trace.Count), gear);
        if (dice.Chance(60)) Record("temperature", RandomWalks.Temperature(dice, trace.Count), 1);
        var channels = new JsonObject();
        foreach (var (quantity, channel) in _channels)
            if (channel.Plan.Count > 0) channels[quantity] = channel.Plan;
        Plan["channels"] = channels;
        Plan["standstill"] = RandomChannel.Quantity(dice.Next(3) * this["velocity"].Grid, this["velocity"].Unit);
    }

    public string Name { get; }

    public JsonObject Plan { get; } = [];

    /// <summary>The turn in deg, or null.</summary>
    public decimal? Modulo { get; }

    public RandomChannel this[string quantity] => _channels[quantity];

    public bool Has(string quantity) => _channels.ContainsKey(quantity);

    /// <summary>A limit at, just above or just below a value that occurs.</summary>
    public string Limit(string quantity, bool isSigned = false) => RandomChannel.Quantity(Number(quantity, isSigned), this[quantity].Unit);

    public decimal Number(string quantity, bool isSigned = false)
    {
        var channel = this[quantity];
        var value = _dice.Pick(channel.Values) + _dice.Pick(0, 0, 0, 0, 1, -1) * channel.Grid;
        return isSigned ? value : Math.Abs(value);
    }

    /// <summary>A distance of some grid steps.</summary>
    public string Distance(int most) => RandomChannel.Quantity(_dice.Next(most + 1) * this["position"].Grid, this["position"].Unit);

    public string Time(int most) => TimeText(_dice.Time(_trace.Step, most));

    /// <summary>A deceleration that takes about a grid step of speed off in a step of time.</summary>
    public string Deceleration()
    {
        var (velocity, seconds) = (this["velocity"], _trace.Step / 1_000_000_000m);
        var perSecond = velocity.Unit switch { "mm/min" => velocity.Grid / 60, "rpm" => velocity.Grid * 6, _ => velocity.Grid };
        return RandomChannel.Quantity(Math.Max(0.001m, Math.Round(perSecond / seconds * _dice.Pick(0.25m, 0.5m, 1m, 2m), 4)), _isRotary ? "deg/s²" : "mm/s²");
    }

    /// <summary>A deceleration that occurs.</summary>
    public string Braking()
    {
        var limit = Number("acceleration");
        return limit > 0 ? RandomChannel.Quantity(limit, this["acceleration"].Unit) : Deceleration();
    }

    public static string TimeText(long time) => $"{(time / 1_000_000m).ToString("0.######", CultureInfo.InvariantCulture)} ms";

    private string AccelerationUnit() => this["velocity"].Unit switch { "mm/min" => "mm/min²", "rpm" => "rpm/s", _ => _isRotary ? "deg/s²" : "mm/s²" };

    private void Record(string quantity, int[] walk, int gear)
    {
        var share = 20m / gear;
        (string Unit, (string, string, decimal)? Motor) units = (quantity, _isRotary) switch
        {
            ("position", false) => ("mm", ("rev", "mm", share)),
            ("velocity", false) => ("mm/s", ("rpm", "mm/min", share)),
            ("acceleration", false) => ("mm/s²", ("rev/s²", "mm/s²", share)),
            ("torque", false) => ("N", ("N·m", "N", 314.159m * gear)),
            ("position", true) => ("deg", ("deg", "deg", 1m / gear)),
            ("velocity", true) => ("deg/s", ("rpm", "rpm", 1m / gear)),
            ("acceleration", true) => ("deg/s²", ("deg/s²", "deg/s²", 1m / gear)),
            ("torque", true) => ("N·m", ("N·m", "N·m", gear)),
            _ => ("°C", null),
        };
        var channel = RandomChannel.Recorded(_dice, $"{Name} {quantity}", units.Unit, units.Motor, walk);
        _channels[quantity] = channel;
        foreach (var (column, numbers) in channel.Columns) _trace.Add(column, numbers);
    }

    // A derived channel is drawn without an entry now and then: then the plan does not say how.
    private void Derive(string quantity, string from, string unit)
    {
        var plan = new JsonObject();
        if (_dice.Chance(70))
            (plan["from"], plan["estimator"]) = (from, new JsonObject { ["name"] = "difference", ["samples"] = _dice.Next(1, 3) });
        var derived = RandomChannel.Derived(this[from], plan, _trace.Times, unit);
        if (unit is "mm/min²") derived = derived with { Values = [.. derived.Values.Select(x => x / 60)], Grid = derived.Grid / 60, Unit = "mm/s²" };
        if (unit is "rpm/s") derived = derived with { Values = [.. derived.Values.Select(x => x * 6)], Grid = derived.Grid * 6, Unit = "deg/s²" };
        _channels[quantity] = derived;
    }
}
