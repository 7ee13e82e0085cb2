using System.Globalization;
using System.Text.Json.Nodes;

namespace MonitorSim.Tests.Model;

/// <summary>A recorded quantity: its column, its entry in the plan, and the values at the load that limits are drawn from.</summary>
/// <param name="Plan">The channel's entry.</param>
/// <param name="Columns">The raw columns by name.</param>
/// <param name="Values">The values at the load in <paramref name="Unit"/>.</param>
/// <param name="Unit">A unit in which the values are short decimals.</param>
/// <param name="Grid">The step of the values.</param>
internal sealed record RandomChannel(JsonObject Plan, Dictionary<string, decimal?[]> Columns, decimal[] Values, string Unit, decimal Grid)
{
    /// <summary>A channel whose raw values are whole numbers of a grid.</summary>
    /// <param name="dice">The choices.</param>
    /// <param name="column">The name of its column.</param>
    /// <param name="unit">The unit at the load.</param>
    /// <param name="motor">The unit at the motor, the unit that it becomes at the load, and the factor; or null.</param>
    /// <param name="walk">The raw values in steps of the grid.</param>
    public static RandomChannel Recorded(Dice dice, string column, string unit, (string Unit, string LoadUnit, decimal Factor)? motor, int[] walk)
    {
        if (!dice.Chance(30)) motor = null;
        var grid = dice.Pick(1m, 1m, 0.5m, 0.1m);
        var scale = dice.Pick(1m, 1m, 1m, 0.5m, 2m);
        var turn = dice.Chance(20) ? -1 : 1;
        var offset = dice.Chance(20) ? dice.Next(-3, 3) * grid : 0m;
        var (rawUnit, loadUnit, toLoad) = motor ?? (unit, unit, 1m);
        var plan = new JsonObject { ["column"] = column, ["unit"] = rawUnit };
        if (motor is not null) plan["side"] = "motor";
        if (scale != 1m) plan["scale"] = JsonNode.Parse(scale.ToString(CultureInfo.InvariantCulture));
        if (turn < 0) plan["invert"] = true;
        if (offset != 0) plan["offset"] = Quantity(offset, rawUnit);
        var columns = new Dictionary<string, decimal?[]> { [column] = [.. walk.Select(x => (decimal?)(x * grid))] };
        var values = walk.Select(x => (x * grid * scale * turn + offset) * toLoad).ToArray();
        var channel = new RandomChannel(plan, columns, values, loadUnit, grid * scale * toLoad);
        if (dice.Chance(25)) plan["second"] = channel.Second(dice, column, grid);
        return channel;
    }

    /// <summary>What the difference over a step gives, to draw limits from.</summary>
    public static RandomChannel Derived(RandomChannel from, JsonObject plan, IReadOnlyList<long> times, string unit)
    {
        var values = from.Values.Select((x, k) => k == 0 ? 0 : Math.Round((x - from.Values[k - 1]) * 1_000_000_000 / (times[k] - times[k - 1]), 3)).ToArray();
        return new(plan, [], values, unit, Math.Round(from.Grid * 1_000_000_000 / (times[1] - times[0]), 3));
    }

    /// <summary>A quantity with its unit.</summary>
    public static string Quantity(decimal value, string unit) => $"{(value / 1.0000000000m).ToString("0.##########", CultureInfo.InvariantCulture)} {unit}";

    private JsonObject Second(Dice dice, string column, decimal grid)
    {
        var off = 0;
        Columns[column + " 2"] = [.. Columns[column].Select(x =>
        {
            if (dice.Chance(20)) off = dice.Chance(60) ? 0 : dice.Next(-2, 2);
            return x + off * grid;
        })];
        var second = new JsonObject { ["column"] = column + " 2", ["tolerance"] = Quantity(dice.Next(3) * Grid, Unit), ["time"] = Quantity(dice.Next(12), "ms") };
        if (dice.Chance(60)) second["reaction"] = dice.Pick("none", "none", "stop 0", "stop 1", "stop 2");
        return second;
    }
}
