using System.Text.Json.Nodes;

namespace MonitorSim.Tests.Model;

/// <summary>Random stops of an axis.</summary>
internal sealed class RandomStops(Dice dice, RandomAxis axis, RandomExpressions expressions)
{
    public JsonObject Next()
    {
        var stops = new JsonObject { ["STO"] = Off(), ["SS1"] = Ramp(), ["SS2"] = Ramp(), ["SOS"] = Hold() };
        if (dice.Chance(40))
        {
            var brake = new JsonObject { ["apply"] = axis.Time(3) };
            if (dice.Chance(75)) brake["window"] = axis.Distance(2);
            stops["SBC"] = brake;
        }

        foreach (var (name, percent) in new[] { ("STO", 12), ("SS1", 25), ("SS2", 30), ("SOS", 25) })
            if (dice.Chance(percent)) stops[name]!["request"] = expressions.Stop();
        return stops;
    }

    private JsonObject Off()
    {
        var off = new JsonObject();
        if (!axis.Has("torque") || !dice.Chance(60)) return off;
        off["residual"] = axis.Limit("torque");
        if (dice.Chance(60)) off["grace"] = axis.Time(4);
        return off;
    }

    private JsonObject Hold()
    {
        var hold = new JsonObject { ["window"] = axis.Distance(5) };
        if (dice.Chance(40)) hold["speed"] = axis.Limit("velocity");
        return hold;
    }

    private JsonObject Ramp()
    {
        var variant = dice.Pick("t", "r", "d");
        var stop = new JsonObject { ["variant"] = variant };
        if (variant == "t")
        {
            stop["time"] = axis.Time(6);
            return stop;
        }

        stop["deceleration"] = variant == "r" ? axis.Deceleration() : dice.Chance(50) ? axis.Braking() : axis.Deceleration();
        if (variant == "r") stop["tolerance"] = RandomChannel.Quantity(dice.Next(4) * axis["velocity"].Grid, axis["velocity"].Unit);
        else if (dice.Chance(40)) stop["filter"] = axis.Time(3);
        if (dice.Chance(50)) stop["delay"] = axis.Time(3);
        if (dice.Chance(50)) stop["settle"] = axis.Time(3);
        if (dice.Chance(40)) stop["timeLimit"] = axis.Time(12);
        return stop;
    }
}
