using System.Globalization;
using System.Numerics;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using MonitorSim.Tests.Traces;

namespace MonitorSim.Tests.Replays;

/// <summary>At the limit is allowed, whatever the unit, the grid and the place; the next representable digit is not.</summary>
[Properties(Arbitrary = [typeof(Displacements)], MaxTest = 300)]
public class AtLimitProperties
{
    [Property]
    public void A_displacement_of_exactly_the_window_never_trips(Displacement d)
    {
        foreach (var function in new[] { $$""" "function": "SOS", "window": "{{d.Window}} {{d.LimitUnit}}" """, $$""" "function": "SLI", "increment": "{{d.Window}} {{d.LimitUnit}}" """ })
        {
            Assert.Empty(Replayed(d, function, d.Start, d.Upper, d.Start, d.OtherEnd).Trips);
            Assert.Equal(3, Assert.Single(Replayed(d, function, d.Start, d.Upper, d.Start, d.Beyond, d.Start).Trips).Sample);
        }

        // The way back from the furthest position.
        var direction = $$""" "function": "SDI", "allow": "positive", "tolerance": "{{d.Window}} {{d.LimitUnit}}" """;
        Assert.Empty(Replayed(d, direction, d.Upper, d.Start, d.Upper).Trips);
        Assert.Equal(1, Assert.Single(Replayed(d, direction, d.Beyond, d.Start).Trips).Sample);
    }

    private static ReplayResult Replayed(Displacement d, string function, params string[] positions)
    {
        var rows = positions.Select((p, k) => $"{k.ToString(CultureInfo.InvariantCulture)},{p}");
        var plan = Bench.Plan($$"""
            "motion": "{{(d.IsRotary ? "rotary" : "linear")}}", "stops": { "STO": {} }, "channels": { "position": { "column": "p", "unit": "{{d.Unit}}" } },
            "monitors": [ { "name": "m", "reaction": "none", {{function}} } ]
            """);
        return Replay.Run(plan, Reading.Of($"t [ms],p\n{string.Join('\n', rows)}\n"));
    }
}

/// <summary>A displacement on a decimal grid, as texts.</summary>
/// <param name="Unit">The unit of the recording.</param>
/// <param name="LimitUnit">The unit of the limit, ten to a power of that of the recording or the same.</param>
/// <param name="IsRotary">Whether the axis turns.</param>
/// <param name="Start">Where it starts.</param>
/// <param name="Upper">Start + window.</param>
/// <param name="OtherEnd">Start - window.</param>
/// <param name="Beyond">Start + window + one of the next digit.</param>
/// <param name="Window">The window, in the limit's unit.</param>
public sealed record Displacement(string Unit, string LimitUnit, bool IsRotary, string Start, string Upper, string OtherEnd, string Beyond, string Window);

/// <summary>Generators of displacements.</summary>
public static class Displacements
{
    private static readonly (string Unit, string LimitUnit, int Power, bool IsRotary)[] Units =
        [("mm", "mm", 0, false), ("mm", "m", -3, false), ("µm", "mm", -3, false), ("m", "mm", 3, false), ("in", "in", 0, false), ("cm", "mm", 1, false),
         ("deg", "deg", 0, true), ("rad", "rad", 0, true), ("rev", "rev", 0, true)];

    public static Arbitrary<Displacement> All() =>
        (from unit in Gen.Elements(Units)
         from digits in Gen.Choose(0, 12)
         from start in Gen.Choose(-1_000_000_000, 1_000_000_000)
         from far in Gen.Choose(0, 9_000)
         from window in Gen.Choose(0, 5_000)
         from finer in Gen.Choose(1, 6)
         let place = start + far * (BigInteger)1_000_000_000
         let scale = BigInteger.Pow(10, finer)
         select new Displacement(unit.Unit, unit.LimitUnit, unit.IsRotary, Text(place, digits), Text(place + window, digits), Text(place - window, digits),
             Text((place + window) * scale + 1, digits + finer), Text(window, digits - unit.Power))).ToArbitrary();

    /// <summary>number · 10^-digits.</summary>
    private static string Text(BigInteger number, int digits)
    {
        if (digits <= 0) return (number * BigInteger.Pow(10, -digits)).ToString(CultureInfo.InvariantCulture);
        var text = BigInteger.Abs(number).ToString(CultureInfo.InvariantCulture).PadLeft(digits + 1, '0');
        return (number.Sign < 0 ? "-" : "") + text[..^digits] + "." + text[^digits..];
    }
}
