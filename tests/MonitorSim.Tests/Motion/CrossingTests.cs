using FsCheck.Xunit;
using MonitorSim.Motion;

namespace MonitorSim.Tests.Motion;

public sealed class CrossingTests
{
    /// <summary>Against plain halving: the same double, whatever rises and wherever the bound lies.</summary>
    [Property(MaxTest = 500)]
    public void IsTheFirstMomentToTheLastBit(byte shape, ushort start, ushort length, ushort at)
    {
        var (low, high) = (start / 1000.0, start / 1000.0 + (1 + length) / 7000.0);
        var where = at / (double)ushort.MaxValue;
        Func<double, double> rising = (shape % 6) switch
        {
            0 => time => time,
            1 => time => time * time * time,
            2 => time => -Math.Exp(-40 * (time - low)),
            3 => time => Math.Exp(40 * (time - low)),
            4 => time => Math.Floor(time * 50),
            _ => time => time < low + (high - low) / 3 ? double.NaN : time,
        };
        var bound = rising(low + (high - low) * (shape % 6 == 5 ? 0.5 + where / 2 : where));
        double Excess(double time) => rising(time) - bound;
        if (Excess(low) >= 0 || !(Excess(high) >= 0)) return;
        Assert.Equal(Halved(Excess, low, high), Crossing.First(Excess, low, high));
    }

    /// <summary>A crossing of a smooth motion costs far less than halving, which takes 50 looks.</summary>
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.031)]
    [InlineData(0.77)]
    public void ASmoothMotionTakesFewLooks(double speed)
    {
        var looks = 0;
        double Excess(double time)
        {
            looks++;
            return 2.5 * time * time + 0.1 * time - speed;
        }

        var found = Crossing.First(Excess, 0, 1);
        // The positive root of the quadratic, in the form without cancellation.
        Assert.Equal(2 * speed / (0.1 + Math.Sqrt(0.01 + 10 * speed)), found, 1e-15);
        Assert.InRange(looks, 3, 30);
    }

    private static double Halved(Func<double, double> excess, double low, double high)
    {
        while (low + (high - low) / 2 is var middle && middle > low && middle < high)
        {
            if (excess(middle) >= 0) high = middle;
            else low = middle;
        }

        return high;
    }
}
