using System.Globalization;
using System.Numerics;
using FsCheck.Xunit;
using Fractions;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

public class TimeTests
{
    [Theory]
    [InlineData("s", 1_000_000_000L)]
    [InlineData("ms", 1_000_000L)]
    [InlineData("µs", 1_000L)]
    [InlineData("μs", 1_000L)]
    [InlineData("us", 1_000L)]
    [InlineData("ns", 1L)]
    public void Units_of_time(string unit, long nanoseconds)
    {
        long[] times = [0, 2 * nanoseconds, 7 * nanoseconds];
        const string rows = "10;1\n12;2\n17;3\n";
        Assert.Equal(times, Reading.Of("clock;v\n" + rows, new Dialect { TimeColumn = "clock", TimeUnit = unit }).Times.ToArray());
        Assert.Equal(times, Reading.Of($"Time [{unit}];v\n" + rows).Times.ToArray());
        Assert.Equal(times, Reading.Of($"Zeit ({unit});v\n" + rows).Times.ToArray());
        Assert.Equal(times, Reading.Of($"t;v\n{unit};mm\n" + rows).Times.ToArray());
        if (unit[0] < 128) Assert.Equal(times, Reading.Of($"time_{unit};v\n" + rows).Times.ToArray());
    }

    [Fact]
    public void Without_a_unit_it_is_seconds_and_the_survey_says_so()
    {
        Assert.Equal([0, 2_000_000_000], Reading.Of("t;v\n10;1\n12;2\n").Times.ToArray());
        Assert.Contains(Reading.Found("t;v\n10;1\n12;2\n").Notes, n => n.Contains("taken to be in s", StringComparison.Ordinal));
        Assert.DoesNotContain(Reading.Found("t_s;v\n10;1\n12;2\n").Notes, n => n.Contains("taken to be in s", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("0;0.0000000005", 1)]
    [InlineData("0;0.00000000049999999999999999999999", 0)]
    [InlineData("0.0000000001;0.0000000006", 1)]
    [InlineData("0.00000000010000000000000000001;0.0000000006", 0)]
    [InlineData("-0.0000000003;0.0000000002", 1)]
    [InlineData("1700000000.123456789;1700000000.123456791", 2)]
    [InlineData("1e-9;3e-9", 2)]
    [InlineData("0.1;0.3", 200_000_000)]
    [InlineData("1700000000.1;1700000000.3", 200_000_000)]
    [InlineData("-5;5", 10_000_000_000)]
    public void Differences_are_exact_then_rounded_halves_up(string two, long difference)
    {
        var texts = two.Split(';');
        var text = $"t;v\n{texts[0]};1\n{texts[1]};2\n";
        if (difference == 0) Assert.Contains("repeats", Assert.Single(Reading.Problems(text)), StringComparison.Ordinal);
        else Assert.Equal([0, difference], Reading.Of(text).Times.ToArray());
    }

    [Property(Arbitrary = [typeof(Texts)], MaxTest = 500)]
    public void Times_agree_with_exact_arithmetic(DecimalSample first, DecimalSample second, byte unit)
    {
        var (name, power) = (unit % 4) switch { 0 => ("s", 9), 1 => ("ms", 6), 2 => ("us", 3), _ => ("ns", 0) };
        var exact = (second.Value - first.Value) * new Fraction(BigInteger.Pow(10, power));
        var doubled = 2 * exact.Numerator + exact.Denominator;
        var expected = BigInteger.Divide(doubled - Modulo(doubled, 2 * exact.Denominator), 2 * exact.Denominator);
        var cells = new TimeCells(name, (byte)'.');
        var zero = cells.Read(System.Text.Encoding.ASCII.GetBytes(first.Text), out var start);
        if (zero != CellText.Number)
        {
            Assert.Equal(CellText.OutOfRange, zero);
            return;
        }

        Assert.Equal(0, start);
        var found = cells.Read(System.Text.Encoding.ASCII.GetBytes(second.Text), out var time);
        if (found == CellText.Number) Assert.Equal(expected, (BigInteger)time);
        else Assert.True(BigInteger.Abs(expected) > long.MaxValue / 4 || second.Value > new Fraction(long.MaxValue / 4), second.Text);
    }

    private static BigInteger Modulo(BigInteger a, BigInteger b) => ((a % b) + b) % b;

    [Property(MaxTest = 300)]
    public void A_rate_never_accumulates(int p, int q, ushort k)
    {
        var rate = new Fraction(Math.Abs((long)p) % 100_000 + 1, Math.Abs((long)q) % 1000 + 1);
        var clock = new RateClock(rate, "run.csv");
        long time = 0;
        for (var i = 0; i <= k; i++) time = clock.Next();
        var exact = new Fraction(k) * new Fraction(1_000_000_000) / rate;
        Assert.Equal((2 * exact.Numerator + exact.Denominator) / (2 * exact.Denominator), (BigInteger)time);
    }

    [Theory]
    [InlineData("2024-03-01T12:00:00Z", "2024-03-01T12:00:00.25Z", 250_000_000)]
    [InlineData("2024-03-01T12:00:00", "2024-03-01 12:00:00,000000001", 1)]
    [InlineData("2024-02-28T23:59:59.5", "2024-02-29T00:00:00.0", 500_000_000)]
    [InlineData("2024-03-01T12:00+01:00", "2024-03-01T11:00:01Z", 1_000_000_000)]
    [InlineData("2024-03-01T12:00:00-0230", "2024-03-01T14:30:00.001Z", 1_000_000)]
    [InlineData("20240301T120000.1", "20240301T120000.2", 100_000_000)]
    [InlineData("2024-03-01", "2024-03-01T24:00:00", 86_400_000_000_000)]
    [InlineData("2016-12-31T23:59:59Z", "2016-12-31T23:59:60Z", 1_000_000_000)]
    [InlineData("1969-12-31T23:59:59.9Z", "1970-01-01T00:00:00.1Z", 200_000_000)]
    [InlineData("2024-03-01T12:00:00.00000000049999999999", "2024-03-01T12:00:00.0000000010", 1)]
    public void Date_times(string first, string second, long difference)
    {
        var text = $"stamp;v\n{first};1\n{second};2\n";
        Assert.Equal([0, difference], Reading.Of(text).Times.ToArray());
        Assert.Equal("ISO 8601", Reading.Found(text).Dialect.TimeUnit);
    }

    [Theory]
    [InlineData("2024-13-01T12:00:00")]
    [InlineData("2023-02-29T12:00:00")]
    [InlineData("2024-03-01T25:00:00")]
    [InlineData("2024-03-01T12:60:00")]
    [InlineData("2024-03-01T12:00:00.")]
    [InlineData("2024-03-01T12:00:00+25:00")]
    [InlineData("2024-03-01T")]
    [InlineData("01.03.2024 12:00:00")]
    [InlineData("20240301")]
    [InlineData("soon")]
    public void What_is_no_date_time_is_told(string cell) =>
        Assert.Equal([$"run.csv(row 3, column 'time'): '{cell}' is no time; write a date-time such as 2024-03-01T12:30:00.250"],
            Reading.Problems($"time;v\n2024-03-01T00:00:00;1\n{cell};2\n"));

    [Fact]
    public void The_time_may_be_asked_for_as_a_column_too()
    {
        var trace = Reading.Of("t;v\n0,5;1\n1,5;2\n", null, [Reading.Number("t")]);
        Assert.Equal([0.5, 1.5], trace.Numbers("t"));
        Assert.Equal([0, 1_000_000_000], trace.Times.ToArray());
    }

    [Theory]
    [InlineData("0 Hz")]
    [InlineData("-5 Hz")]
    [InlineData("2000000000 Hz")]
    public void Rates_out_of_range_are_told(string rate) =>
        Assert.StartsWith("run.csv: a rate ", Assert.Single(Reading.Problems("v\n1\n2\n",
            new Dialect { Rate = new Fraction(decimal.Parse(rate.Split(' ')[0], CultureInfo.InvariantCulture)) })), StringComparison.Ordinal);
}
