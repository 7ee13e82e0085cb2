using FsCheck.Xunit;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Tuning;

public sealed class LongerStretchesTests
{
    /// <summary>Whoever is said to be beaten is, by a longer stretch with at least the limit; and whoever is beaten by one longer by an eighth, and by one at least, is said to be.</summary>
    [Property(MaxTest = 500)]
    public void BeatenIsWhoeverALongerOneBeats(ulong[] lengths, byte[] limits)
    {
        var longer = new LongerStretches();
        var added = new List<(long Length, double Limit)>();
        foreach (var (bits, limit) in lengths.Zip(limits))
        {
            // Lengths of all sizes, from none to centuries.
            var length = (long)(bits >> 1 >> limit % 60);
            var atMost = limit / 16;
            var isBeaten = longer.Beat(length, atMost);
            if (isBeaten) Assert.Contains(added, one => one.Length > length && one.Limit >= atMost);
            else Assert.DoesNotContain(added, one => one.Length >= length + length / 8 + 1 && one.Limit >= atMost);
            longer.Add(length, atMost);
            added.Add((length, atMost));
        }
    }

    [Fact]
    public void TheLongestLengthHasAClass()
    {
        var longer = new LongerStretches();
        longer.Add(long.MaxValue, 1);
        Assert.False(longer.Beat(long.MaxValue, 1));
        Assert.True(longer.Beat(0, 1));
        Assert.False(longer.Beat(0, 2));
        Assert.Equal([true, true, false], new[] { 14L, 15, 16 }.Select(length => Sixteen().Beat(length, 1)));

        static LongerStretches Sixteen()
        {
            var sixteen = new LongerStretches();
            sixteen.Add(16, 1);
            return sixteen;
        }
    }
}
