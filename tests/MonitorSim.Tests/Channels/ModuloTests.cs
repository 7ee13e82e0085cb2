using FsCheck.Xunit;
using Fractions;
using MonitorSim.Channels;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Channels;

/// <summary>Positions of a turning table: unwrapped by the shorter step, and the representative nearest to the middle of a window.</summary>
public class ModuloTests
{
    private static RecordedChannel Channel(params double[] values) => new(new Numbers(new NumberColumn("p", null, values), hold: false), Fraction.One, Fraction.Zero);

    private static double[] Unwrapped(params double[] values)
    {
        var channel = new UnwrappedChannel(Channel(values), new Constant(360));
        return [.. values.Select((v, k) => double.IsNaN(v) ? double.NaN : channel.Value(k))];
    }

    [Fact]
    public void A_step_lies_within_half_a_turn_and_half_a_turn_goes_forward()
    {
        Assert.Equal([350.0, 370, 350], Unwrapped(350, 10, 350));
        Assert.Equal([0.0, 180, 360], Unwrapped(0, 180, 0));
        Assert.Equal([0.0, -179.9], Unwrapped(0, 180.1), new Close());
        Assert.Equal([0.0, 1, 1], Unwrapped(0, 721, -359));
        Assert.Equal([350.0, double.NaN, 370], Unwrapped(350, double.NaN, 10));
    }

    [Property(MaxTest = 300)]
    public void A_representative_is_a_whole_number_of_turns_away_and_nearest_to_the_middle(short position, short lower, ushort width)
    {
        var (low, high) = (new Fraction(lower, 10), new Fraction(lower, 10) + new Fraction(width % 3600, 10));
        var window = new ModuloWindow(low, high, new Constant(360));
        var found = window.Representative(Channel(position / 10.0), 0).Exact();
        var turns = (found - new Fraction(position, 10)) / 360;
        Assert.Equal(1, turns.Denominator);

        // Nearest, and of two the lower: within half a turn, the upper end of which belongs to the next.
        var distance = found - (low + high) / 2;
        Assert.True(distance >= -180 && distance < 180, $"{distance}");
    }

    private sealed class Close : IEqualityComparer<double>
    {
        public bool Equals(double x, double y) => Math.Abs(x - y) < 1e-9;

        public int GetHashCode(double x) => 0;
    }
}
