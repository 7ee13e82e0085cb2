using System.Text.Json.Nodes;

namespace MonitorSim.Tests.Model;

/// <summary>Random monitors of every function, with limits that the recording meets exactly.</summary>
internal sealed class RandomMonitors(Dice dice, RandomAxis axis, RandomExpressions expressions)
{
    private static readonly string[] Functions = ["SLS", "SLS", "SLS", "SSR", "SDI", "SLA", "SAR", "SLP", "SLI", "SOS", "SCA", "SSM"];

    /// <summary>The functions that an axis can have.</summary>
    public static string Function(Dice dice, RandomAxis axis)
    {
        var functions = Functions.ToList();
        if (axis.Has("torque")) functions.AddRange(["SLT", "STR"]);
        if (axis.Has("temperature")) functions.Add("SMT");
        return dice.Pick(functions);
    }

    public JsonObject Next(string name, string function)
    {
        var monitor = new JsonObject { ["name"] = name, ["function"] = function };
        if (dice.Chance(65)) monitor["request"] = expressions.Next();
        if (dice.Chance(50)) monitor["delay"] = axis.Time(4);
        if (function is "SCA" or "SSM" or "SMT") Outputs(monitor);
        if (function is not ("SCA" or "SSM"))
        {
            if (dice.Chance(50)) monitor["filter"] = axis.Time(3);
            if (dice.Chance(75)) monitor["reaction"] = dice.Pick("stop 0", "stop 1", "stop 2", "none");
        }

        Parameters(monitor, function);
        return monitor;
    }

    private void Outputs(JsonObject monitor)
    {
        if (dice.Chance(50)) monitor["onDelay"] = axis.Time(3);
        if (dice.Chance(50)) monitor["offDelay"] = axis.Time(3);
    }

    private void Parameters(JsonObject monitor, string function)
    {
        var isSigned = function is "SLS" or "SSR" or "SLA" or "SAR" or "SLT" or "SSM" && dice.Chance(25);
        if (isSigned) monitor["signed"] = true;
        switch (function)
        {
            case "SLS": Speed(monitor, isSigned); break;
            case "SSR": Range(monitor, "velocity", isSigned); break;
            case "SAR": Range(monitor, "acceleration", isSigned); break;
            case "STR": Range(monitor, "torque", true); break;
            case "SLT": monitor["limit"] = axis.Limit("torque", isSigned); break;
            case "SMT": Temperature(monitor); break;
            case "SLP" when axis.Modulo is not null: (monitor["lower"], monitor["upper"]) = (Turn(), Turn()); break;
            case "SLP": Range(monitor, "position", true); break;
            case "SSM": Output(monitor, isSigned); break;
            case "SCA": Areas(monitor); break;
            case "SLA":
                monitor["limit"] = axis.Limit("acceleration", isSigned);
                if (dice.Chance(60)) monitor["deceleration"] = axis.Braking();
                break;
            case "SDI":
                (monitor["allow"], monitor["tolerance"]) = (dice.Pick("positive", "negative"), axis.Distance(4));
                if (dice.Chance(60)) monitor["reference"] = dice.Pick("furthest", "start");
                break;
            case "SLI":
                monitor["increment"] = axis.Distance(6);
                if (dice.Chance(75)) monitor["moveTime"] = RandomAxis.TimeText(dice.Next(1, 12) * 1_500_000);
                if (monitor.ContainsKey("moveTime") && dice.Chance(75)) monitor["window"] = axis.Distance(3);
                break;
            case "SOS":
                monitor["window"] = axis.Distance(5);
                if (dice.Chance(50)) monitor["speed"] = axis.Limit("velocity");
                break;
            default: throw new ArgumentException(function);
        }
    }

    private void Speed(JsonObject monitor, bool isSigned)
    {
        if (dice.Chance(35))
            monitor["limit"] = axis.Limit("velocity", isSigned);
        else
            monitor["levels"] = new JsonArray([.. Enumerable.Range(0, dice.Next(2, 4)).Select(_ => new JsonObject { ["when"] = expressions.Next(1), ["limit"] = axis.Limit("velocity", isSigned) })]);
        if (!dice.Chance(45)) return;
        monitor["approach"] = new JsonObject { ["deceleration"] = axis.Deceleration(), ["tolerance"] = RandomChannel.Quantity(dice.Next(3) * axis["velocity"].Grid, axis["velocity"].Unit) };
        monitor["delay"] = axis.Time(8);
    }

    private void Range(JsonObject monitor, string quantity, bool isSigned)
    {
        var (a, b) = (axis.Number(quantity, isSigned), axis.Number(quantity, isSigned));
        var kind = dice.Next(4);
        if (kind != 0) monitor["lower"] = RandomChannel.Quantity(Math.Min(a, b), axis[quantity].Unit);
        if (kind != 1) monitor["upper"] = RandomChannel.Quantity(Math.Max(a, b), axis[quantity].Unit);
    }

    // An output has to have a way on: at most half the range to spare; upwards only, at most the limit.
    private void Output(JsonObject monitor, bool isSigned)
    {
        var (a, b) = (axis.Number("velocity", isSigned), axis.Number("velocity", isSigned));
        var (low, high, kind) = (Math.Min(a, b), Math.Max(a, b), dice.Next(4));
        var unit = axis["velocity"].Unit;
        if (kind != 0) monitor["lower"] = RandomChannel.Quantity(low, unit);
        if (kind != 1) monitor["upper"] = RandomChannel.Quantity(high, unit);
        var most = kind == 0 ? Math.Abs(high) : kind == 1 ? axis["velocity"].Grid * 2 : (high - low) / 2;
        Hysteresis(monitor, most, axis["velocity"].Grid, unit);
    }

    private void Temperature(JsonObject monitor)
    {
        monitor["limit"] = axis.Limit("temperature", true);
        Hysteresis(monitor, axis["temperature"].Grid * 3, axis["temperature"].Grid, "°C");
        if (dice.Chance(50)) monitor.Remove("reaction");
    }

    private void Areas(JsonObject monitor)
    {
        var least = decimal.MaxValue;
        var ranges = new JsonArray();
        for (var i = dice.Next(1, 2); i >= 0; i--)
        {
            var (a, b) = axis.Modulo is null ? (axis.Number("position", true), axis.Number("position", true)) : (TurnNumber(), TurnNumber());
            ranges.Add(new JsonArray(RandomChannel.Quantity(Math.Min(a, b), axis["position"].Unit), RandomChannel.Quantity(Math.Max(a, b), axis["position"].Unit)));
            least = Math.Min(least, Math.Abs(a - b));
        }

        monitor["ranges"] = ranges;
        Hysteresis(monitor, least / 2, axis["position"].Grid, axis["position"].Unit);
    }

    private void Hysteresis(JsonObject monitor, decimal most, decimal grid, string unit)
    {
        var hysteresis = Math.Min(most, dice.Next(3) * grid);
        if (dice.Chance(60)) monitor["hysteresis"] = RandomChannel.Quantity(hysteresis, unit);
    }

    private decimal TurnNumber() => dice.Next(24) * axis["position"].Grid;

    private string Turn() => RandomChannel.Quantity(TurnNumber(), axis["position"].Unit);
}
