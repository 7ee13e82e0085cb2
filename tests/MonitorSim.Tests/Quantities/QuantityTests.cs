using FsCheck.Xunit;
using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Tests.Quantities;

public class QuantityTests
{
    [Theory]
    [InlineData("33 mm/s", "0.033 m/s")]
    [InlineData("33 mm/s", "1.98 m/min")]
    [InlineData("33mm/s", "33.000 mm/s")]
    [InlineData("12,5 N·m", "12.5 Nm")]
    [InlineData("1e-3 m", "1 mm")]
    [InlineData("+1E3 mm", "1 m")]
    [InlineData(".5 m", "500 mm")]
    [InlineData("5. m", "5000 mm")]
    [InlineData("−5 mm", "-5 mm")]
    [InlineData("1500 rpm", "25 rev/s")]
    [InlineData("1500 1/min", "1500 rpm")]
    [InlineData("1500/min", "1500 rpm")]
    [InlineData("360 deg", "1 rev")]
    [InlineData("0.1 mm", "100 µm")]
    [InlineData("1 lbf·ft", "12 lbf·in")]
    public void Equal_quantities_are_equal_without_rounding(string a, string b) => InCulture.Each(() =>
        Assert.Equal(Quantity.Parse(a).Exact, Quantity.Parse(b).Exact));

    [Theory]
    [InlineData("10.5 mm", "10.3 mm", "0.2 mm")]
    [InlineData("0.3 deg", "0.1 deg", "0.2 deg")]
    public void A_difference_on_the_grid_is_exact(string a, string b, string difference) =>
        Assert.Equal(Quantity.Parse(difference).Exact, Quantity.Parse(a).Exact - Quantity.Parse(b).Exact);

    [Theory]
    [InlineData("33", "'33' has no unit; write one, such as '33 mm', '33 deg' or '33 ms'")]
    [InlineData("", "'' is no quantity; write a number and a unit, such as 33 mm/s or 12,5 N·m, without grouping of digits")]
    [InlineData("mm/s", "'mm/s' is no quantity; write a number and a unit, such as 33 mm/s or 12,5 N·m, without grouping of digits")]
    [InlineData("1,234.5 mm", "'1,234.5 mm' is no quantity; write a number and a unit, such as 33 mm/s or 12,5 N·m, without grouping of digits")]
    [InlineData("1e9999 mm", "'1e9999 mm' is no quantity; write a number and a unit, such as 33 mm/s or 12,5 N·m, without grouping of digits")]
    [InlineData("NaN mm", "'NaN mm' is no quantity; write a number and a unit, such as 33 mm/s or 12,5 N·m, without grouping of digits")]
    [InlineData("33 mm/sec2x", "unknown unit 'sec2x' in 'mm/sec2x'; write one such as mm/s, N·m or deg")]
    public void What_is_no_quantity_says_what_would_be(string text, string error) => InCulture.Each(() =>
    {
        Assert.False(Quantity.TryParse(text, out _, out var said));
        Assert.Equal(error, said);
        Assert.Equal(error, Assert.Throws<FormatException>(() => Quantity.Parse(text)).Message);
    });

    [Theory]
    [InlineData("1 ns", 1L)]
    [InlineData("0.5 ns", 1L)]
    [InlineData("0.49999999999999999999999999 ns", 0L)]
    [InlineData("-0.5 ns", 0L)]
    [InlineData("-0.51 ns", -1L)]
    [InlineData("-1.5 ns", -1L)]
    [InlineData("1.5 ns", 2L)]
    [InlineData("4 ms", 4_000_000L)]
    [InlineData("0.069999999 s", 69_999_999L)]
    [InlineData("51.333333 ms", 51_333_333L)]
    [InlineData("1 min", 60_000_000_000L)]
    public void Nanoseconds_round_to_the_nearest_halves_up(string text, long nanoseconds) =>
        Assert.Equal(nanoseconds, Quantity.Parse(text).Nanoseconds);

    [Fact]
    public void Nanoseconds_of_a_length_are_an_error() =>
        Assert.Contains("'1 mm' is no duration", Assert.Throws<InvalidOperationException>(() => Quantity.Parse("1 mm").Nanoseconds).Message, StringComparison.Ordinal);

    [Fact]
    public void Nanoseconds_beyond_the_counter_are_an_error() =>
        Assert.Throws<OverflowException>(() => Quantity.Parse("1e300 s").Nanoseconds);

    [Fact]
    public void The_text_stays_as_written_until_something_changes()
    {
        Quantity quantity = "12,50 N·m";
        Assert.Equal("12,50 N·m", quantity.ToString());
        Assert.Equal("0.5 N·m", (quantity with { Number = new Fraction(1, 2) }).ToString());
        Assert.Equal(new Quantity(new Fraction(25, 2), "N·m"), quantity);
        Assert.Equal("0.3333333333333333 mm", new Quantity(new Fraction(1, 3), "mm").ToString());
    }

    private static readonly string[] Grids = ["mm", "mm/s", "m/min", "deg", "rpm", "N·m", "µm", "in", "ms", "°C"];

    [Property]
    public bool A_sample_on_a_decimal_grid_equals_its_quantity(int count, byte places, byte which)
    {
        var unit = Unit.Parse(Grids[which % Grids.Length]);
        var number = new Fraction(count) / Fraction.Pow(10, places % 12);
        var text = unit.Join(NumberText.Exact(number));
        return Quantity.Parse(text).Exact == number * unit.Factor + unit.Offset && Quantity.Parse(text).Number == number;
    }

    [Property]
    public bool Any_double_survives_its_text(double value)
    {
        if (!double.IsFinite(value)) return true;
        var text = value.ToString("R", System.Globalization.CultureInfo.InvariantCulture);
        return Quantity.TryParse(text + " m", out var quantity, out _) && quantity!.Si.Equals(value == 0 ? 0.0 : value);
    }

    [Property]
    public bool Nearest_double_gives_a_double_back(double value) =>
        !double.IsFinite(value) || ExactDouble.Nearest(ExactDouble.Of(value)) == value;

    // A fraction is between two doubles; the nearest one is at most half a step away, measured exactly.
    [Property]
    public bool Nearest_double_is_nearest(long numerator, long denominator)
    {
        if (denominator == 0) return true;
        var exact = new Fraction(numerator, denominator);
        var nearest = ExactDouble.Nearest(exact);
        var error = (ExactDouble.Of(nearest) - exact).Abs();
        return error <= (ExactDouble.Of(Math.BitIncrement(nearest)) - exact).Abs()
            && error <= (ExactDouble.Of(Math.BitDecrement(nearest)) - exact).Abs();
    }

    [Theory]
    [InlineData(double.Epsilon)]
    [InlineData(double.MaxValue)]
    [InlineData(2.2250738585072009e-308)]
    [InlineData(-0.1)]
    public void Nearest_double_reaches_both_ends(double value) => Assert.Equal(value, ExactDouble.Nearest(ExactDouble.Of(value)));
}
