using Fractions;
using FsCheck.Xunit;
using MonitorSim.Channels;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class FrontierTests
{
    /// <summary>Sliding minima of a row, largest window by window: the definition, worked by hand in the examples.</summary>
    [Theory]
    [InlineData(new double[] { 1, 3, 2, 5, 4 }, new double[] { 5, 4, 2, 2, 1 })]
    [InlineData(new double[] { 10, 20, 30, 50, 10, 70, 30 }, new double[] { 70, 30, 20, 10, 10, 10, 10 })]
    public void WorkedRows(double[] row, double[] expected)
    {
        for (var samples = 1; samples <= row.Length; samples++) Assert.Equal(expected[samples - 1], AtFilter(Steps(row), samples - 1));
    }

    /// <summary>Frontier and critical limit against brute force over every stretch.</summary>
    [Property(MaxTest = 300)]
    public void AgreesWithBruteForce(sbyte[] values)
    {
        var row = values.Take(40).Select(value => (double)(value / 8)).ToArray();
        if (row.Length == 0) return;
        var steps = Steps(row);
        for (var filter = 0; filter <= row.Length; filter++)
        {
            double? brute = null;
            for (var from = 0; from < row.Length; from++)
                for (var until = from + filter; until < row.Length; until++)
                    brute = Math.Max(brute ?? double.NegativeInfinity, row[from..(until + 1)].Min());
            Assert.Equal(brute, AtFilter(steps, filter));
            var critical = new CriticalLimit(filter);
            Feed(row, critical.Add);
            Assert.Equal(brute, critical.Value?.Value);
        }
    }

    /// <summary>Cycles at which another level is in force, and exceeded by itself, lengthen a row without a measure of their own; where nothing is compared, it ends. What is found is where it is said to be.</summary>
    [Property(MaxTest = 300)]
    public void AgreesWithBruteForceAmongOtherLevelsAndGaps(sbyte[] values)
    {
        double?[] row = [.. values.Take(40).Select(value => value % 7 == 0 ? double.NaN : value % 3 == 0 ? (double?)null : value / 8)];
        var frontier = new Frontier();
        Feed(row, frontier.Add, frontier.AddExceeded, frontier.Break, () => frontier.IsRowOpen);
        var steps = frontier.Steps();
        Assert.All(steps, step => Assert.Equal((step.Filter, (double?)step.Limit), (step.Until - step.From, Smallest(step.From, step.Until))));
        for (var filter = 0; filter <= row.Length; filter++)
        {
            double? brute = null;
            for (var from = 0; from < row.Length; from++)
                for (var until = from + filter; until < row.Length; until++)
                    if (Smallest(from, until) is { } least && !double.IsNaN(least)) brute = Math.Max(brute ?? double.NegativeInfinity, least);
            Assert.Equal(brute, AtFilter(steps, filter));
            var critical = new CriticalLimit(filter);
            Feed(row, critical.Add, critical.AddExceeded, critical.Break, () => critical.IsRowOpen);
            Assert.Equal(brute, critical.Value?.Value);
            if (brute is null) continue;
            Assert.True(critical.At - critical.From >= filter);
            Assert.Equal(brute, Smallest(critical.From, critical.At));
        }

        // NaN is less than any number.
        double? Smallest(long from, long until) => row[(int)from..((int)until + 1)].Min();
    }

    private delegate void Add(long time, in Reading reading);

    private static void Feed(double[] row, Add add)
    {
        var channel = new RecordedChannel(new Numbers(new NumberColumn("x", null, row), hold: false), Fraction.One, Fraction.Zero);
        for (var k = 0; k < row.Length; k++) add(k, Reading.Of(channel, k));
    }

    private static void Feed(double?[] row, Add add, Action<long> addExceeded, Action end, Func<bool> isOpen)
    {
        var channel = new RecordedChannel(new Numbers(new NumberColumn("x", null, [.. row.Select(value => value is { } number && !double.IsNaN(number) ? number : 0)]), hold: false), Fraction.One, Fraction.Zero);
        for (var k = 0; k < row.Length; k++)
        {
            if (row[k] is null) addExceeded(k);
            else if (double.IsNaN(row[k]!.Value)) end();
            else add(k, Reading.Of(channel, k));
            Assert.Equal(row[k] is not double.NaN, isOpen());
        }
    }

    private static IReadOnlyList<(long Filter, Fraction Limit, long From, long Until)> Steps(double[] row)
    {
        var frontier = new Frontier();
        Feed(row, frontier.Add);
        return frontier.Steps();
    }

    private static double? AtFilter(IReadOnlyList<(long Filter, Fraction Limit, long From, long Until)> steps, long filter)
    {
        foreach (var step in steps)
            if (filter <= step.Filter) return (double)step.Limit;
        return null;
    }
}
