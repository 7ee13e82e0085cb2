using FsCheck.Xunit;
using Fractions;
using MonitorSim.Channels;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Channels;

/// <summary>Scans against loops that look at every value; and channels, whose scans may name a sample too many but never one too late.</summary>
public class ScanTests
{
    [Property(MaxTest = 500)]
    public void The_first_value_that_matters(sbyte[] cells, sbyte low, byte width)
    {
        double[] values = [.. cells.Select(cell => cell == 99 ? double.NaN : cell / 4.0)];
        var (from, to) = (low / 4.0, (low + width / 8) / 4.0);
        Assert.Equal(First(values, x => !(x >= from && x <= to)), Scan.FirstNotWithin(values, from, to));
        Assert.Equal(First(values, x => !(x < from || x > to)), Scan.FirstNotBeyond(values, from, to));
        Assert.Equal(First(values, x => !(x <= to)), Scan.FirstNotWithin(values, double.NegativeInfinity, to));
    }

    [Property(MaxTest = 500)]
    public void A_channel_names_no_sample_too_late(sbyte[] cells, sbyte low, byte width, sbyte factor, sbyte offset)
    {
        double[] values = [.. cells.Select(cell => cell == 99 ? double.NaN : cell / 10.0)];
        Fraction scale = new(factor == 0 ? 1 : factor, 7), shift = new(offset, 30);
        var channel = new RecordedChannel(new Numbers(new NumberColumn("x", null, values), hold: false), scale, shift);

        // Bounds on the grid of the values, so that they are often met exactly.
        var (a, b) = (new Fraction(low, 10) * scale + shift, new Fraction(low + width / 4, 10) * scale + shift);
        var (lower, upper) = a < b ? (a, b) : (b, a);
        var (from, to) = (new Constant(lower), new Constant(upper));
        bool Missing(int k) => !channel.IsPresent(k);
        var outside = FirstSample(values.Length, k => Missing(k) || channel.Exact(k) < lower || channel.Exact(k) > upper);
        var within = FirstSample(values.Length, k => Missing(k) || (channel.Exact(k) >= lower && channel.Exact(k) <= upper));
        Assert.InRange(channel.FirstOutside(from.Value, to.Value, 0, values.Length), 0, outside);
        Assert.InRange(channel.FirstWithin(from.Value, to.Value, 0, values.Length), 0, within);
        Assert.Equal(within, channel.FirstWithin(from.Value, to.Value, 0, values.Length));

        // Well away from the bounds nothing is named.
        Assert.Equal(FirstSample(values.Length, Missing), channel.FirstOutside(-1e3, 1e3, 0, values.Length));
        Assert.Equal(FirstSample(values.Length, Missing), channel.FirstWithin(1e3, 2e3, 0, values.Length));
    }

    private static int First(double[] values, Func<double, bool> matters) => FirstSample(values.Length, k => matters(values[k]));

    private static int FirstSample(int count, Func<int, bool> matters) => Enumerable.Range(0, count).Where(matters).Append(count).First();
}
