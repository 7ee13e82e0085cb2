using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Fractions;
using MonitorSim.Channels;
using MonitorSim.Estimators;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Channels;

/// <summary>Comparing is exact: against the same sums in fractions, near the limit and far from it.</summary>
[Properties(Arbitrary = [typeof(Grids)], MaxTest = 400)]
public class ReadingTests
{
    [Property]
    public void A_displacement_against_a_window(Grid grid)
    {
        var channel = grid.Channel();
        for (var k = 0; k < grid.Values.Length; k++)
            for (var j = 0; j < grid.Values.Length; j++)
            {
                var exact = ((Exact(grid.Values[k]) - Exact(grid.Values[j])) * grid.Factor).Abs();
                var reading = Reading.Of(channel, k).Minus(channel, j).Magnitude();
                foreach (var limit in grid.Limits.Append(exact))
                    Assert.Equal(exact.CompareTo(limit), Reading.Compare(reading, new Constant(limit)));
                Assert.Equal(exact, reading.Exact());
            }
    }

    [Property]
    public void A_value_a_rate_and_a_ramp(Grid grid)
    {
        var channel = grid.Channel();
        var times = new SampleTimes([.. grid.Values.Select((_, k) => k * 4_000_000L)]);
        var rate = new Difference(channel, times, 2);
        for (var k = 1; k < grid.Values.Length; k++)
        {
            var value = Exact(grid.Values[k]) * grid.Factor + grid.Offset;
            var oldest = Math.Max(0, k - 2);
            var slope = (Exact(grid.Values[k]) - Exact(grid.Values[oldest])) * grid.Factor * new Fraction(1_000, 4 * (k - oldest));
            foreach (var limit in grid.Limits.Append(value).Append(slope))
            {
                Assert.Equal(value.CompareTo(limit), Reading.Compare(Reading.Of(channel, k), new Constant(limit)));
                Assert.Equal(slope.CompareTo(limit), Reading.Compare(Reading.Of(rate, k), new Constant(limit)));
                var ramp = slope + limit * 12_345;
                Assert.Equal(ramp.CompareTo(limit), Reading.Compare(Reading.Of(rate, k).Plus(new Constant(limit), 12_345), new Constant(limit)));
            }
        }
    }

    [Property]
    public void Two_readings(Grid grid)
    {
        var channel = grid.Channel();
        Fraction At(int k) => Exact(grid.Values[k]) * grid.Factor + grid.Offset;
        for (var k = 0; k < grid.Values.Length; k++)
            for (var j = 0; j < grid.Values.Length; j++)
            {
                var (x, y) = (Reading.Of(channel, k), Reading.Of(channel, j));
                Assert.Equal(At(k).CompareTo(At(j)), Reading.Compare(x, y));
                Assert.Equal(At(k).CompareTo(At(j)) >= 0 ? At(k) : At(j), Reading.Larger(x, y).Exact());
                Assert.Equal(At(k).CompareTo(At(j)) <= 0 ? At(k) : At(j), Reading.Smaller(x, y).Exact());
                Assert.Equal(At(k).Numerator.Sign, Reading.Sign(x));
            }
    }

    [Property]
    public void The_error_bound_holds(Grid grid)
    {
        var channel = grid.Channel();
        for (var k = 1; k < grid.Values.Length; k++)
        {
            var reading = Reading.Of(channel, k).Minus(channel, k - 1).Plus(new Constant(grid.Limits[0]), 3);
            var distance = (MonitorSim.Quantities.ExactDouble.Of(reading.Value) - reading.Exact()).Abs();
            Assert.True(distance <= MonitorSim.Quantities.ExactDouble.Of(reading.Error), $"{distance} is more than {reading.Error:R}");
        }
    }

    private static Fraction Exact(double value) => NumberColumn.ShortestDecimal(value);
}

/// <summary>Values on a decimal grid with a unit's factor and limits near what they differ by.</summary>
public sealed record Grid(double[] Values, Fraction Factor, Fraction Offset, Fraction[] Limits)
{
    internal RecordedChannel Channel() => new(new Numbers(new NumberColumn("x", null, [.. Values]), hold: false), Factor, Offset);
}

/// <summary>Generators of grids.</summary>
public static class Grids
{
    private static readonly Fraction Pi = Fraction.FromString("3.141592653589793", System.Globalization.CultureInfo.InvariantCulture);

    // mm, µm, inch, degrees, turns, rpm, m/min, km/h, none.
    private static readonly Fraction[] Factors =
        [new(1, 1000), new(1, 1_000_000), new(254, 10_000), Pi / 180, Pi * 2, Pi / 30, new(1, 60), new(10, 36), Fraction.One];

    public static Arbitrary<Grid> All() =>
        (from factor in Gen.Elements(Factors)
         from digits in Gen.Choose(0, 7)
         from start in Gen.Choose(-100_000_000, 100_000_000)
         from steps in Gen.Choose(-30, 30).ArrayOf(6)
         from offset in Gen.Choose(-50, 50)
         from limit in Gen.Choose(0, 40)
         let step = new Fraction(1, System.Numerics.BigInteger.Pow(10, digits))
         let values = steps.Select(n => (double)((decimal)(start + n) / (decimal)Math.Pow(10, digits))).ToArray()
         let near = limit * step * factor
         select new Grid(values, factor, offset * step * factor,
             [near, near + step * factor / 1_000_000_000, near - step * factor / 1_000_000_000, -near])).ToArbitrary();
}
