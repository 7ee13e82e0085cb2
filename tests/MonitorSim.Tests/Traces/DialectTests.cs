using System.Text;
using Fractions;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

public class DialectTests
{
    [Theory]
    [InlineData(",", ".")]
    [InlineData(";", ".")]
    [InlineData(";", ",")]
    [InlineData("\t", ".")]
    [InlineData("\t", ",")]
    [InlineData("|", ".")]
    [InlineData("|", ",")]
    public void Separator_and_decimal_mark_are_worked_out(string separator, string mark)
    {
        var text = "t;v;on\n0.5;-1.25;off\n0.625;2e-1;on\n".Replace(".", mark, StringComparison.Ordinal).Replace(";", separator, StringComparison.Ordinal);
        var trace = Reading.Of(text);
        Assert.Equal([0, 125_000_000], trace.Times.ToArray());
        Assert.Equal([-1.25, 0.2], trace.Numbers("v"));
        Assert.Equal(["off", "on"], trace.Words("on"));
        var found = Reading.Found(text).Dialect;
        Assert.Equal((separator[0], mark[0]), (found.Delimiter!.Value, found.Decimal!.Value));
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Line_ends_of_all_kinds_will_do(string end)
    {
        var trace = Reading.Of(string.Join(end, "# a log", "t,v", "0,1", "1,2", "2,3") + end);
        Assert.Equal([1.0, 2, 3], trace.Numbers("v"));
        Assert.Equal([1.0, 2, 3], Reading.Of(string.Join(end, "x", "y,z,w", "t,v", "0,1", "1,2", "2,3"), new Dialect { SkipRows = 2 }).Numbers("v"));
    }

    [Fact]
    public void A_plan_of_the_worked_cases_reads_its_trace()
    {
        const string text = "# recorded\n# recorded\nTime;DI_0;table position\n ;;mm\n0;true;36\n4,5;0;-7,5\n";
        var trace = Reading.Of(text,
            new Dialect { Delimiter = ';', Decimal = ',', SkipRows = 2, UnitsRow = true, TimeColumn = "Time", TimeUnit = "ms" },
            [Reading.Word("DI_0"), Reading.Number("table position")]);
        Assert.Equal([0, 4_500_000], trace.Times.ToArray());
        Assert.Equal([36, -7.5], trace.Numbers("table position"));
        Assert.Equal(["true", "0"], trace.Words("DI_0"));
        Assert.Equal("mm", trace.Find("table position")!.Unit);
    }

    [Theory]
    [InlineData(1000, 1, new long[] { 0, 1_000_000, 2_000_000 })]
    [InlineData(60, 1, new long[] { 0, 16_666_667, 33_333_333 })]
    [InlineData(3000, 1, new long[] { 0, 333_333, 666_667 })]
    [InlineData(2, 3, new long[] { 0, 1_500_000_000, 3_000_000_000 })]
    [InlineData(400_000_000, 1, new long[] { 0, 3, 5 })]
    public void A_rate_stands_for_the_time_column(int numerator, int denominator, long[] times)
    {
        var trace = Reading.Of("v,w\n1,on\n2,off\n3,on\n", new Dialect { Rate = new Fraction(numerator, denominator) });
        Assert.Equal(times, trace.Times.ToArray());
        Assert.Equal([1.0, 2, 3], trace.Numbers("v"));
    }
}
